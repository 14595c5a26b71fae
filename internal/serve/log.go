package serve

import (
	"io"
	"log/slog"
	"os"
	"sync/atomic"

	"brazebooth/internal/mistake"
)

// lostLines counts log lines that could not be written, because no session waits for a full disk.
var lostLines atomic.Int64

// openLog logs lines of JSON to a file, or to standard error. Logging never blocks a session: if the disk is full or
// the reader slow, lines are lost and counted.
func openLog(file string, standard io.Writer) (*slog.Logger, func(), error) {
	to, closeFile := standard, func() error { return nil }
	if file != "" {
		f, err := os.OpenFile(file, os.O_CREATE|os.O_APPEND|os.O_WRONLY, 0o600)
		if err != nil {
			return nil, nil, mistake.New(err.Error(), "another file: --log FILE, or leave it out for standard error")
		}
		to, closeFile = f, f.Close
	}
	w := &lines{to: to, queue: make(chan []byte, 1024), quit: make(chan struct{}), done: make(chan struct{})}
	go w.run()
	return slog.New(slog.NewJSONHandler(w, nil)), func() {
		close(w.quit)
		inTime(lastWait, func() { // the other end may not be read any more
			<-w.done
			_ = closeFile()
		})
	}, nil
}

type lines struct {
	to    io.Writer
	queue chan []byte // never closed: a session may outlast the log
	quit  chan struct{}
	done  chan struct{}
	torn  bool // a line was written in part, when the disk got full
}

func (l *lines) Write(p []byte) (int, error) {
	select {
	case l.queue <- append([]byte(nil), p...):
	default:
		lostLines.Add(1)
	}
	return len(p), nil
}

func (l *lines) run() {
	defer close(l.done)
	for {
		select {
		case line := <-l.queue:
			l.put(line)
		case <-l.quit:
			for len(l.queue) > 0 { // nobody else takes from it
				l.put(<-l.queue)
			}
			return
		}
	}
}

func (l *lines) put(line []byte) {
	if l.torn {
		line = append([]byte("\n"), line...)
	}
	n, err := l.to.Write(line)
	if err != nil {
		lostLines.Add(1)
	}
	l.torn = err != nil && (l.torn || n > 0)
}
