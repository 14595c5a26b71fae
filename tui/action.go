package tui

import (
	"brazebooth/calc"
	"brazebooth/internal/choice"
)

// action is what a screen asks of the root. A screen never changes the session itself.
type action interface{ action() }

type (
	goBack      struct{} // one screen back
	leave       struct{} // end the program
	openHelp    struct{}
	openWords   struct{}
	openPoints  struct{} // every caution of the card
	openDrawing struct{} // the cross-section
	openMap     struct{} // the operating window
	openBeat    struct{} // the timed arc's page
	startBeat   struct{} // play it
	openBooth   struct{} // five huge figures
	openPart    struct{} // the pages beside the card, where they were left
	openShelf   struct{} // the page that keeps the card
	enterPart   struct{ page string }
	openMarks   struct{ page *marksPage }
	answerStops struct{ ids []string }
	sawBead     struct{ ids []string }
	turnPage    struct{ by int }
	findCards   struct{}
	loadCard    struct{ entry Entry }
	openRecord  struct{ entry Entry }
	openForm    struct{ form *form }
	markRecord  struct {
		entry   Entry
		deleted bool
	}
	enterRecord struct{}
	keepCard    struct{ name string }
	keepTrial   struct{ acceptable bool } // the last test bead, as what it looks or as acceptable
	stampNow    struct{}
	keepReading struct{}
	openDrill   struct{}                // the chosen level's job
	drillPoints struct{}                // its cautions
	layBead     struct{}                // in the simulated booth
	endDrill    struct{}                // show the truth
	keepDrill   struct{}                // how it went
	recall      struct{ source string } // what a power source taught before
	walkBy      struct{ by int }        // steps of the walk
	walkDrill   struct{}                // from its end to practice
	otherUnits  struct{}
	openWhy     struct{ row cardRow }
	openAsk     struct{ ask *choice.Choice }
	refuse      struct{ fault }

	// explain shows what a row of a list rests on.
	explain struct {
		ask *choice.Choice
		row *choice.Row
	}
	// chose puts a row's value on the job and goes on.
	chose struct {
		ask *choice.Choice
		id  string
	}
	// change puts a changed job in place, if it has a card.
	change struct {
		job  calc.Job
		done string // said when it was done, "" for nothing
	}
)

func (goBack) action()      {}
func (leave) action()       {}
func (openHelp) action()    {}
func (openWords) action()   {}
func (openPoints) action()  {}
func (openDrawing) action() {}
func (openMap) action()     {}
func (openBeat) action()    {}
func (startBeat) action()   {}
func (openBooth) action()   {}
func (openPart) action()    {}
func (openShelf) action()   {}
func (enterPart) action()   {}
func (openMarks) action()   {}
func (answerStops) action() {}
func (sawBead) action()     {}
func (turnPage) action()    {}
func (findCards) action()   {}
func (loadCard) action()    {}
func (openRecord) action()  {}
func (openForm) action()    {}
func (markRecord) action()  {}
func (enterRecord) action() {}
func (keepCard) action()    {}
func (keepTrial) action()   {}
func (stampNow) action()    {}
func (keepReading) action() {}
func (openDrill) action()   {}
func (drillPoints) action() {}
func (layBead) action()     {}
func (endDrill) action()    {}
func (keepDrill) action()   {}
func (recall) action()      {}
func (walkBy) action()      {}
func (walkDrill) action()   {}
func (otherUnits) action()  {}
func (openWhy) action()     {}
func (openAsk) action()     {}
func (refuse) action()      {}
func (explain) action()     {}
func (chose) action()       {}
func (change) action()      {}
