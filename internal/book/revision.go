package book

import (
	"bytes"
	"cmp"
	"crypto/rand"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"brazebooth/internal/plain"
)

// newID is the id of a new record: 64 random bits, so that two shops practically never choose the same.
func newID() string {
	var b [8]byte
	_, _ = rand.Read(b[:]) // never fails
	return hex.EncodeToString(b[:])
}

// Author is who makes revisions, where, with which program, and by which clock.
type Author struct {
	Who, Where, Program string
	Now                 Clock
}

// New is the first revision of a record.
func (a Author) New(kind Kind, body any) (Revision, error) {
	return a.revision(newID(), kind, nil, false, body)
}

// Change is a revision that replaces another one.
func (a Author) Change(old *Revision, body any) (Revision, error) {
	return a.revision(old.ID, old.Kind, old, false, body)
}

// Delete is a revision that marks a record as no longer wanted; its history stays.
func (a Author) Delete(old *Revision) (Revision, error) {
	return a.revision(old.ID, old.Kind, old, true, old.Body)
}

func (a Author) revision(id string, kind Kind, parent *Revision, deleted bool, body any) (Revision, error) {
	now := time.Now
	if a.Now != nil {
		now = a.Now
	}
	b, err := compactJSON(body)
	if err != nil {
		return Revision{}, err
	}
	r := Revision{ID: id, Kind: kind, At: stamp(now()), Who: plain.Line(a.Who, 40), Where: plain.Line(a.Where, 40),
		Program: a.Program, Schema: Schema, Deleted: deleted, Body: b}
	if parent != nil {
		r.Parent = parent.Rev
		if r.At <= parent.At { // a clock that was set back
			r.At = cmp.Or(stampOf(parent.At, time.Millisecond), parent.At)
		}
	}
	r.Rev = r.hash()
	if r.fault() == nil {
		r.own = r.Rev
	}
	return r, nil
}

// compactJSON is a body in the form that is hashed: without white space between its parts.
func compactJSON(body any) (json.RawMessage, error) {
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(body); err != nil {
		return nil, err
	}
	return bytes.TrimSuffix(out.Bytes(), []byte("\n")), nil
}

// hash is the first 128 bits of SHA-256 over every field but Rev, each preceded by its length so that the borders
// between fields are unambiguous.
func (r *Revision) hash() string {
	fields := [...]string{r.ID, r.Parent, string(r.Kind), r.At, r.Who, r.Where, r.Program, strconv.Itoa(r.Schema),
		strconv.FormatBool(r.Deleted)}
	head := make([]byte, 0, 256)
	for _, s := range fields {
		head = append(append(strconv.AppendInt(head, int64(len(s)), 10), ':'), s...)
	}
	head = append(strconv.AppendInt(head, int64(len(r.Body)), 10), ':')
	h := sha256.New()
	_, _ = h.Write(head) // never fails
	_, _ = h.Write(r.Body)
	return hex.EncodeToString(h.Sum(head[:0])[:16])
}

// Verify says what is wrong with a revision's hash, kind, body or time; nil for nothing. For a revision that this
// process made, only the hash is compared: the rest was checked when it was made, and any change since would change the
// hash.
func (r *Revision) Verify() error {
	want := r.hash()
	switch {
	case want != r.Rev:
		return fmt.Errorf("revision %s of %s is not what was saved: its hash is %s", r.Rev, r.ID, want)
	case r.own == want:
		return nil
	case !compact(r.Body):
		return fmt.Errorf("revision %s of %s has a body that cannot be read", r.Rev, r.ID)
	}
	return r.fault()
}

// fault says what is wrong with a revision besides its hash and the form of its body.
func (r *Revision) fault() error {
	switch {
	case !slices.Contains(Kinds[:], r.Kind):
		return fmt.Errorf("revision %s of %s is of an unknown kind %q", r.Rev, r.ID, plain.Line(string(r.Kind), 20))
	case !validID(r.ID) || r.Parent != "" && !hexOf(r.Parent, 32):
		return fmt.Errorf("revision %s has no proper id", r.Rev)
	case r.At != stampOf(r.At, 0) || r.At < "2000" || r.At > "9990":
		return fmt.Errorf("revision %s of %s has no proper time", r.Rev, r.ID)
	case r.Schema < 1 || r.Schema > Schema:
		return fmt.Errorf("revision %s of %s was written by a newer program: use that one", r.Rev, r.ID)
	case unsafe(r.Who) || unsafe(r.Where) || unsafe(r.Program) || unsafe(r.Body):
		return fmt.Errorf("revision %s of %s holds control characters", r.Rev, r.ID)
	}
	return nil
}

// tame makes a revision's fields safe for a terminal, and replaces a malformed time by one of the usual length.
func (r *Revision) tame() {
	r.ID, r.Rev, r.Parent, r.Kind = plain.Line(r.ID, 16), plain.Line(r.Rev, 32), plain.Line(r.Parent,
		32), Kind(plain.Line(string(r.Kind), 10))
	r.Who, r.Where, r.Program = plain.Line(r.Who, 40), plain.Line(r.Where, 40), plain.Line(r.Program, 40)
	if r.At != stampOf(r.At, 0) {
		r.At = stamp(time.Time{})
	}
}

// stampOf adds a duration to a time of a revision; "" if the text is not a time.
func stampOf(at string, later time.Duration) string {
	t, err := time.Parse(time.RFC3339Nano, at)
	if err != nil {
		return ""
	}
	return stamp(t.Add(later))
}

func validID(id string) bool { return hexOf(id, 16) }

// hexOf reports whether a text is n lower-case hexadecimal digits.
func hexOf(s string, n int) bool {
	return len(s) == n && strings.Trim(s, "0123456789abcdef") == ""
}

// compact reports whether JSON has no white space between its parts.
func compact(body []byte) bool {
	var out bytes.Buffer
	return json.Compact(&out, body) == nil && bytes.Equal(out.Bytes(), body)
}

// unsafe reports whether a text has unescaped characters that control a terminal or change the direction of writing. In
// JSON they are escaped, and removed when a body is read.
func unsafe[T ~string | ~[]byte](text T) bool {
	s := string(text)
	return !utf8.ValidString(s) || strings.ContainsFunc(s, func(r rune) bool {
		return r < ' ' || r >= 0x7f && (unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r))
	})
}
