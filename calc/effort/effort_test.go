package effort

import (
	"context"
	"errors"
	"testing"
)

// A nil account is never over and counts nothing; another one is over once its caller has left.
func TestOver(t *testing.T) {
	var none *Account
	none.AddSection(7)
	if err := none.Over(); err != nil {
		t.Error(err)
	}
	ctx, leave := context.WithCancel(t.Context())
	e := New(ctx)
	if err := e.Over(); err != nil {
		t.Error(err)
	}
	leave()
	if err := e.Over(); !errors.Is(err, context.Canceled) {
		t.Error(err)
	}
}

// Work is counted whether it comes from sections or from elsewhere; a branch begins with it and leaves it alone.
func TestWorkIsCounted(t *testing.T) {
	e := New(t.Context())
	if e.PerSection() != 0 {
		t.Errorf("%d a section before the first", e.PerSection())
	}
	e.AddSection(100)
	e.AddSection(300)
	e.Take(OfPlane(800)) // eight cells of the plane are one unit
	if e.Work() != 500 || e.Sections() != 2 || e.PerSection() != 250 {
		t.Errorf("%d units, %d sections, %d each", e.Work(), e.Sections(), e.PerSection())
	}
	own := e.Branch()
	own.Take(50)
	if own.Work() != 550 || own.Sections() != 0 || e.Work() != 500 {
		t.Errorf("the branch has %d units, the account %d", own.Work(), e.Work())
	}
}

// With every place taken a caller who leaves does no work; one who stays does, once a place is free.
func TestPlaces(t *testing.T) {
	for range Places() {
		if err := Acquire(t.Context()); err != nil {
			t.Fatal(err)
		}
	}
	gone, leave := context.WithCancel(t.Context())
	leave()
	if Limited(gone, func() { t.Error("worked for a caller who left") }) {
		t.Error("a place was found")
	}
	did := make(chan bool)
	go func() {
		worked := false
		got := Limited(t.Context(), func() { worked = true })
		did <- got && worked
	}()
	for range Places() {
		Release()
	}
	if !<-did {
		t.Error("no work was done for a caller who stayed")
	}
}
