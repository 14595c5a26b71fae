package program

import (
	"fmt"
	"slices"
	"sync"

	"brazebooth/internal/book"
)

// ledger records what the hands tried to save in a book, and what was acknowledged. It is safe for use by several
// goroutines.
type ledger struct {
	mu      sync.Mutex
	turns   *sync.Cond // signalled at every act
	records []*soakRecord
	done    int // acts so far, successful or not
	ended   bool
	refused []string // answers to acts that failed without a kill
	damaged []string // damage that the book showed during the run
	strayed []string // wrong answers to watchers
	looks   int      // answers to watchers
	cut     int      // commands that were killed
}

// soakRecord is a record that a hand tried to save, with its states in order.
type soakRecord struct {
	kind   book.Kind
	mark   string // a unique word
	id     string // "" until it was acknowledged
	states []soakState
}

// soakState is one intended state of a record.
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

// tried adds a record before the attempt to save it; watchers do not know it yet.
func (l *ledger) tried(kind book.Kind, mark, note string) *soakRecord {
	l.mu.Lock()
	defer l.mu.Unlock()
	r := &soakRecord{kind: kind, mark: mark, states: []soakState{{note: note}}}
	l.records = append(l.records, r)
	return r
}

// then adds a state before the attempt to save it.
func (l *ledger) then(r *soakRecord, next soakState) {
	l.mu.Lock()
	defer l.mu.Unlock()
	r.states = append(r.states, next)
}

// came records the outcome for a record's last state: the acknowledged id, "" for none.
func (l *ledger) came(r *soakRecord, id string) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if id != "" {
		if r.id != "" && r.id != id {
			l.damaged = append(l.damaged, fmt.Sprintf("a change of %s was answered with %s", r.id, id))
		}
		if r.id == "" { // set once, since others read it without a lock
			r.id = id
		}
		r.states[len(r.states)-1].said = true
	}
	l.done++
	l.turns.Broadcast()
}

// await waits until so many acts were done; false if no more will come.
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

// fault records damage, each message once.
func (l *ledger) fault(format string, args ...any) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.damaged = once(l.damaged, fmt.Sprintf(format, args...))
}

// stray records a wrong answer, each message once.
func (l *ledger) stray(format string, args ...any) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.strayed = once(l.strayed, fmt.Sprintf(format, args...))
}

// once adds a line if it is not there yet.
func once(list []string, line string) []string {
	if slices.Contains(list, line) {
		return list
	}
	return append(list, line)
}

// known are the records of a kind that were acknowledged so far.
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
