// Package plainwords is how hard a text is to read: its sentences, words and
// syllables counted, and the school grade that they speak for.
package plainwords
