// Package pencil is what a pencil makes of a sum; for tests only. It shares no
// code with package working, so that a put_in can be held against it: numbers
// are read as decimals and stay exact fractions for as long as they can.
//
// A sum has numbers without exponent, symbols, + - * / ^ ( ), the sign -, the
// functions sqrt min max exp ln floor ceil and the constant pi. ^ binds
// stronger than a sign before it and takes the right one first: -2^2 is -4 and
// 2^3^2 is 512.
package pencil
