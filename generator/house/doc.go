// Package house holds the rules of the house that the compiler cannot check:
// which part may import which, how a product must be written so that every
// machine computes the same bits, that everything exported says what it does,
// that no function outgrows the screen, and that the top of the tree and the
// test data stay in order. It exists because a rule that only a guide states is
// broken by the third hurried change.
//
// There is nothing here but tests; they read the source and run nothing of it.
package house
