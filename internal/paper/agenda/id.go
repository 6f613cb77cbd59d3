package agenda

import (
	"crypto/sha256"
	"encoding/hex"
	"strconv"
	"strings"
)

// ID names an entry by what it is and not by its day, so that a calendar moves
// an entry whose day has changed instead of keeping both. The parts are such as
// garden, tub, kind of task and its number of that kind; other parts give
// another id.
//
// It is a UUID of version 8 (RFC 9562 section 5.8): the first octets of the
// SHA-256 of the parts, each with its length before it.
func ID(parts ...string) string {
	var name strings.Builder
	for _, p := range parts {
		name.WriteString(strconv.Itoa(len(p)) + ":" + p)
	}
	sum := sha256.Sum256([]byte(name.String()))
	id := sum[:16]
	id[6] = id[6]&0x0f | 0x80 // version 8
	id[8] = id[8]&0x3f | 0x80 // variant of RFC 9562
	h := hex.EncodeToString(id)
	return strings.Join([]string{h[:8], h[8:12], h[12:16], h[16:20], h[20:]}, "-")
}
