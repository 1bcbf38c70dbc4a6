// Package practice varies the numbers of calculations, and marks answers to them.
//
// An Exercise works one calculation, or a chain of them, for the numbers of a card. Which numbers a card has follows
// from the exercise's seed and the number of the card alone, so that they are the same on paper, in the key and in a
// page. Marking is arithmetic in the same program as the calculation: a page does it with its module, bit for bit as Go
// does. The package owns which numbers a card has, how an answer is read, and the sentences of a mark. It must not know
// a page, nor the subject: the wrong ways to work an answer are slips of its sheet.
package practice
