package serve

import "errors"

// Why a session ended although its guest did not end it; the guest sees this text.
var (
	errGone    = errors.New("the client is gone")
	errStopped = errors.New("stopped by ctrl+c")
	errIdle    = errors.New("closed: no key was pressed for a long time. What was saved is in the book")
	errLongest = errors.New("closed: this session reached its time limit. What was saved is in the book")
	errStalled = errors.New("closed: the client read almost nothing for a long time. What was saved is in the book")
	errDown    = errors.New("the server is going down. What was saved is in the book; connect again in a minute")
	errFailed  = errors.New("this session failed and is closed. What was saved is in the book; all others continue")
	errFull    = errors.New("full: no more sessions are allowed now; try again in a minute")
	errKeyFull = errors.New("this key has too many sessions open: close one, or try again in a minute")
	// errAddressFull is errKeyFull for a guest without a listed key.
	errAddressFull = errors.New("your address has too many sessions open without a listed key: close one, or try " +
		"again in a minute")
	errNotIn   = errors.New("this key is not allowed in")
	errChanged = errors.New("what this key may do has changed: connect again")
)
