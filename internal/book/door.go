package book

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"reflect"

	"brazebooth/calc/practice"
)

// admit says why a revision is not taken into a book, nil where it is. It asks more than Verify, which also has to do for
// what earlier books took in: a body that can be read as what it is, of numbers and a time that can be.
func (r *Revision) admit() error {
	if err := r.Verify(); err != nil {
		return err
	}
	own := r.made != nil && r.made.rev == r.Rev
	switch {
	case len(r.Body) > largestBody:
		return fmt.Errorf("revision %s of %s has a body of more than %d MB", r.Rev, r.ID, largestBody>>20)
	case !own && r.At >= lastForeign, own && r.Parent == "" && r.At >= lastOwn:
		return fmt.Errorf("revision %s of %s is of %.10s, a time that cannot be: set the clock of the machine that saves", r.Rev, r.ID, r.At)
	case own:
		return nil
	}
	return r.possible()
}

// Times from which on nobody saves. What comes from elsewhere is refused a year before, so that a change of it, which is
// never earlier than what it replaces, can be kept.
const (
	lastForeign = "2099"
	lastOwn     = "2100"
)

// bodies are what the bodies of each kind hold.
var bodies = map[Kind]reflect.Type{CardKind: reflect.TypeFor[Card](), TrialKind: reflect.TypeFor[Trial](), ReadingKind: reflect.TypeFor[Reading](), SourceKind: reflect.TypeFor[Source](),
	SpoolKind: reflect.TypeFor[Spool](), PersonKind: reflect.TypeFor[Person](), PracticeKind: reflect.TypeFor[practice.Outcome]()}

// possible says why a body is none of its kind.
func (r *Revision) possible() error {
	switch {
	case len(r.Who)+len(r.Where)+len(r.Program) > mostTexts:
		return fmt.Errorf("revision %s of %s has names of more than %d bytes", r.Rev, r.ID, mostTexts)
	case !bytes.HasPrefix(r.Body, []byte("{")):
		return fmt.Errorf("revision %s of %s has a body that is no object", r.Rev, r.ID)
	case bytes.Count(r.Body, []byte("{")) > mostParts:
		return fmt.Errorf("revision %s of %s has a body of more than %d parts", r.Rev, r.ID, mostParts)
	}
	v := reflect.New(bodies[r.Kind])
	if err := json.Unmarshal(r.Body, v.Interface()); err != nil {
		return fmt.Errorf("revision %s of %s has a body that is none of a %s: %w", r.Rev, r.ID, r.Kind, err)
	}
	if f, ok := impossible(v.Elem()); ok {
		return fmt.Errorf("revision %s of %s holds the number %g, which nothing in a shop comes to", r.Rev, r.ID, f)
	}
	return nil
}

const (
	mostTexts = 1000   // bytes that who, where and the program may take together: each is cut to 40 letters where it is made
	mostParts = 10_000 // parts of a body, each of which takes more room read than it takes written: a card has some hundred
)

// mostNumber is more than anything that a shop measures, counts or pays, in whatever unit and currency.
const mostNumber = 1e9

// impossible finds a number that cannot be, however deep.
func impossible(v reflect.Value) (f float64, found bool) {
	switch v.Kind() {
	case reflect.Float64:
		return v.Float(), math.Abs(v.Float()) > mostNumber
	case reflect.Int:
		return float64(v.Int()), math.Abs(float64(v.Int())) > mostNumber
	case reflect.Struct:
		for i := range v.NumField() {
			if f, found = impossible(v.Field(i)); found {
				return f, true
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			if f, found = impossible(v.Index(i)); found {
				return f, true
			}
		}
	}
	return 0, false
}
