package program

import (
	"fmt"
	"slices"
	"sync"

	"brazebooth/internal/book"
)

// ledger is what hands tried to keep in a book, and what of it was acknowledged. It is safe for use by several
// goroutines.
type ledger struct {
	mu      sync.Mutex
	turns   *sync.Cond // signalled at every act
	records []*soakRecord
	done    int // acts so far, whatever came of them
	ended   bool
	refused []string // answers to acts that were not done, where nobody was killed
	damaged []string // what the book showed of damage while it was at work
	strayed []string // answers to who only looked that were not as they should be
	looks   int      // answers to who only looked
	cut     int      // commands that were killed
}

// soakRecord is a record that somebody tried to keep, state after state.
type soakRecord struct {
	kind   book.Kind
	mark   string // a word that no other record holds
	id     string // "" as long as none was told
	states []soakState
}

// soakState is what a record was to be from then on.
type soakState struct {
	note    string
	deleted bool
	said    bool // it was acknowledged
}

func newLedger() *ledger {
	l := new(ledger)
	l.turns = sync.NewCond(&l.mu)
	return l
}

// tried adds a record before it is asked for; nobody is told of it yet.
func (l *ledger) tried(kind book.Kind, mark, note string) *soakRecord {
	l.mu.Lock()
	defer l.mu.Unlock()
	r := &soakRecord{kind: kind, mark: mark, states: []soakState{{note: note}}}
	l.records = append(l.records, r)
	return r
}

// then adds a state before it is asked for.
func (l *ledger) then(r *soakRecord, next soakState) {
	l.mu.Lock()
	defer l.mu.Unlock()
	r.states = append(r.states, next)
}

// came notes what came of the last state of a record: the id that was told, "" where nothing was acknowledged.
func (l *ledger) came(r *soakRecord, id string) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if id != "" {
		if r.id != "" && r.id != id {
			l.damaged = append(l.damaged, fmt.Sprintf("a change of %s was answered with %s", r.id, id))
		}
		if r.id == "" { // it stays: whoever knows of the record reads it without asking
			r.id = id
		}
		r.states[len(r.states)-1].said = true
	}
	l.done++
	l.turns.Broadcast()
}

// await waits until so many acts were done; false says that there are none to come.
func (l *ledger) await(acts int) bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	for l.done < acts && !l.ended {
		l.turns.Wait()
	}
	return !l.ended
}

func (l *ledger) over() {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.ended = true
	l.turns.Broadcast()
}

// fault notes damage, each once.
func (l *ledger) fault(format string, args ...any) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.damaged = once(l.damaged, fmt.Sprintf(format, args...))
}

// stray notes an answer that is not as it should be, each once.
func (l *ledger) stray(format string, args ...any) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.strayed = once(l.strayed, fmt.Sprintf(format, args...))
}

// once adds a line that is not there yet.
func once(list []string, line string) []string {
	if slices.Contains(list, line) {
		return list
	}
	return append(list, line)
}

// known are the records of a kind that were acknowledged by now.
func (l *ledger) known(kind book.Kind) (list []*soakRecord) {
	l.mu.Lock()
	defer l.mu.Unlock()
	for _, r := range l.records {
		if r.id != "" && r.kind == kind {
			list = append(list, r)
		}
	}
	return list
}

func (l *ledger) acknowledged() (n int) {
	for _, r := range l.records {
		for _, s := range r.states {
			if s.said {
				n++
			}
		}
	}
	return n
}
