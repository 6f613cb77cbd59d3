package store

import (
	"crypto/rand"
	"encoding/base32"
)

// letters are the digits of an id: small, safe in an address, and without the
// four that are misread or spell words.
const letters = "0123456789abcdefghjkmnpqrstvwxyz"

var idCode = base32.NewEncoding(letters).WithPadding(base32.NoPadding)

// newID is 80 random bits in 16 letters: nobody guesses one, and two alike are
// not met with.
func newID() string {
	var bits [10]byte
	_, _ = rand.Read(bits[:]) // it fills the slice or ends the program
	return idCode.EncodeToString(bits[:])
}
