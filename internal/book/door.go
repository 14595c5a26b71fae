package book

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"reflect"

	"brazebooth/calc/practice"
)

// admit says why a revision must not be saved into a book; nil if it may. It is stricter than Verify, which has to
// accept what earlier books accepted: the body must be readable as its kind, with possible numbers and a possible time.
func (r *Revision) admit() error {
	if err := r.Verify(); err != nil {
		return err
	}
	own := r.own == r.Rev
	switch {
	case len(r.Body) > largestBody:
		return fmt.Errorf("revision %s of %s has a body of more than %d MB", r.Rev, r.ID, largestBody>>20)
	case !own && r.At >= lastForeign, own && r.Parent == "" && r.At >= lastOwn:
		return fmt.Errorf("revision %s of %s has an impossible time, %.10s: set the clock of the machine that saves",
			r.Rev, r.ID, r.At)
	case own:
		return nil
	}
	return r.possible()
}

// Revisions from these times on are refused. The limit for revisions from elsewhere is a year earlier, so that a change
// of one, which is never earlier than its original, can still be saved.
const (
	lastForeign = "2099"
	lastOwn     = "2100"
)

var bodies = map[Kind]reflect.Type{CardKind: reflect.TypeFor[Card](), TrialKind: reflect.TypeFor[Trial](),
	ReadingKind: reflect.TypeFor[Reading](), SourceKind: reflect.TypeFor[Source](),
	SpoolKind: reflect.TypeFor[Spool](), PersonKind: reflect.TypeFor[Person](),
	PracticeKind: reflect.TypeFor[practice.Outcome]()}

// possible says why a body cannot be one of its kind; nil if it can.
func (r *Revision) possible() error {
	switch {
	case len(r.Who)+len(r.Where)+len(r.Program) > mostTexts:
		return fmt.Errorf("revision %s of %s has names of more than %d bytes", r.Rev, r.ID, mostTexts)
	case !bytes.HasPrefix(r.Body, []byte("{")):
		return fmt.Errorf("revision %s of %s has a body that is not a JSON object", r.Rev, r.ID)
	case bytes.Count(r.Body, []byte("{")) > mostParts:
		return fmt.Errorf("revision %s of %s has a body of more than %d parts", r.Rev, r.ID, mostParts)
	}
	v := reflect.New(bodies[r.Kind])
	if err := json.Unmarshal(r.Body, v.Interface()); err != nil {
		return fmt.Errorf("revision %s of %s has a body that is not that of a %s: %w", r.Rev, r.ID, r.Kind, err)
	}
	if f, ok := impossible(v.Elem()); ok {
		return fmt.Errorf("revision %s of %s holds the number %g, more than anything in a shop", r.Rev, r.ID, f)
	}
	return nil
}

const (
	mostTexts = 1000   // bytes of who, where and program together; this program cuts each to 40 columns
	mostParts = 10_000 // parts of a body, each of which takes more memory than text; a card has some hundred
)

// mostNumber is more than anything that a shop measures, counts or pays, in any unit and currency.
const mostNumber = 1e9

// impossible finds an impossible number, at any depth.
func impossible(v reflect.Value) (f float64, found bool) {
	n, part := 0, v.Field
	switch v.Kind() {
	case reflect.Float64:
		return v.Float(), math.Abs(v.Float()) > mostNumber
	case reflect.Int:
		return float64(v.Int()), math.Abs(float64(v.Int())) > mostNumber
	case reflect.Struct:
		n = v.NumField()
	case reflect.Slice:
		n, part = v.Len(), v.Index
	}
	for i := 0; i < n && !found; i++ {
		f, found = impossible(part(i))
	}
	return f, found
}
