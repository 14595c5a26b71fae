// Package keep keeps slow answers for all sessions of the program. A caller who asks for an answer that is kept gets it
// at once. A caller who asks for one that is being computed waits for that computation, which is given up only when
// nobody waits for it any more. When there are too many answers, the one that was asked for longest ago is dropped.
package keep
