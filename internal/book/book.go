package book

import (
	"context"
	"encoding/json"
	"errors"
	"time"
)

// Schema is the version of the JSON in a revision's body.
const Schema = 1

// Kind is the kind of a record.
type Kind string

// The kinds of record.
const (
	CardKind    Kind = "card"
	TrialKind   Kind = "trial"
	ReadingKind Kind = "reading"
	SourceKind  Kind = "source"
	SpoolKind   Kind = "spool"
	PersonKind  Kind = "person"
	// PracticeKind is the outcome of a job in a simulated booth; nothing is ever learned from it.
	PracticeKind Kind = "practice"
)

// Kinds lists every kind.
var Kinds = [...]Kind{CardKind, TrialKind, ReadingKind, SourceKind, SpoolKind, PersonKind, PracticeKind}

// Revision is one state of one record. It never changes.
type Revision struct {
	Rev     string          `json:"rev"`              // hash of everything else
	ID      string          `json:"id"`               // of the record
	Parent  string          `json:"parent,omitempty"` // revision that this one replaces
	Kind    Kind            `json:"kind"`
	At      string          `json:"at"` // UTC, RFC 3339 with milliseconds; never before its parent's
	Who     string          `json:"who,omitempty"`
	Where   string          `json:"where,omitempty"`
	Program string          `json:"program"`
	Schema  int             `json:"schema"`
	Deleted bool            `json:"deleted,omitempty"`
	Body    json.RawMessage `json:"body"`

	own string // its hash if this process made it; never saved
}

// Head is a record in a list: its present revision without the body.
type Head struct {
	ID      string `json:"id"`
	Rev     string `json:"rev"`
	Kind    Kind   `json:"kind"`
	At      string `json:"at"`
	Name    string `json:"name"`
	Line    string `json:"line"`
	Deleted bool   `json:"deleted,omitempty"`
}

// Query says which records to list, newest first. Each word of Text must begin a word of the record.
type Query struct {
	Kind    Kind // "" for all
	Text    string
	Deleted bool // deleted records too
	Limit   int  // 0: 50
	Offset  int
}

// Book is a shop's record. It is safe for use by several goroutines.
type Book interface {
	// Save saves all revisions or none; when it returns without an error they are on the disk, or on the server. A
	// revision that is there already is not an error.
	Save(ctx context.Context, list ...Revision) error
	// SaveOn saves one revision if its parent is still the record's present one; otherwise ErrStale: somebody else
	// changed the record first.
	SaveOn(ctx context.Context, r Revision) error
	// Get is a record's present revision, even if it is a deletion. ErrNone if there is no such record.
	Get(ctx context.Context, id string) (Revision, error)
	// History is every revision of a record, oldest first; after a merge it may have branches.
	History(ctx context.Context, id string) ([]Revision, error)
	// List is what a query finds.
	List(ctx context.Context, q Query) ([]Head, error)
	// Begun lists a few records whose ids begin with prefix.
	Begun(ctx context.Context, kind Kind, prefix string) ([]Head, error)
	// Each visits every revision in a fixed order, until visit returns an error.
	Each(ctx context.Context, visit func(Revision) error) error
	// Check reads the whole book and says what is wrong with it.
	Check(ctx context.Context) (faults []string, revisions int, err error)
	// Backup writes a copy of the book as a SQLite file that must not exist yet.
	Backup(ctx context.Context, file string) error
	// Where is the book's place for messages: the file, or the server's address without its password.
	Where() string
	Close() error
}

// ErrNone is the error of a look-up that finds nothing.
var ErrNone = errors.New("no such record in the book")

// ErrStale is the error of a change where another change came first.
var ErrStale = errors.New("somebody else changed this record meanwhile")

// ErrReadOnly is the error of saving into a book that is open only to read.
var ErrReadOnly = errors.New("this book can only be read")

// Clock is the time of a new revision; tests set it.
type Clock func() time.Time

func stamp(t time.Time) string { return t.UTC().Format("2006-01-02T15:04:05.000Z") }
