package serve

import "errors"

// Why a session ended that its guest did not leave; the guest is told this text.
var (
	errGone    = errors.New("the client is gone")
	errStopped = errors.New("stopped by ctrl+c")
	errIdle    = errors.New("closed: no key was pressed for a long time. What was kept is in the book")
	errLongest = errors.New("closed: this session was open for as long as one may be. What was kept is in the book")
	errStalled = errors.New("closed: the client took nothing for a long time, or next to nothing. What was " +
		"kept is in the book")
	errDown    = errors.New("the server goes down. What was kept is in the book; connect again in a minute")
	errFailed  = errors.New("this session failed and is closed. What was kept is in the book; nobody else is disturbed")
	errFull    = errors.New("full: as many sessions are open as there may be; try again in a minute")
	errKeyFull = errors.New("this key has as many sessions open as it may have: close one, or try again in a minute")
	// errAddressFull is errKeyFull for a guest without a listed key.
	errAddressFull = errors.New("your address has as many sessions without a listed key open as it may have: " +
		"close one, or try again in a minute")
	errNotIn   = errors.New("this key may not come in")
	errChanged = errors.New("what this key may do has changed: connect again")
)
