package batch

import (
	"context"
	"errors"
	"io"
	"sync"

	"brazebooth/calc"
)

// task is a row on its way through: a worker fills line and closes done, the writer waits for that.
type task struct {
	row  row
	line []byte
	err  error // ends the batch
	done chan struct{}
}

// spent are buffers of lines that were written, for later lines.
type spent chan []byte

func (s spent) take() []byte {
	select {
	case line := <-s:
		return line[:0]
	default:
		return nil
	}
}

func (s spent) give(line []byte) {
	select {
	case s <- line:
	default: // there are enough
	}
}

// answer sends the rows through the workers and writes the lines in the rows' order. At most a few rows for each worker
// are in memory. stop ends the context, of the reading too: a row that ends the batch does not wait for the next row.
func answer(ctx context.Context, stop context.CancelFunc, t table, out io.Writer, o *Options, tally Tally) (Tally,
	error) {
	workers := max(1, o.Workers)
	queue, order := make(chan *task), make(chan *task, 4*workers)
	old := make(spent, cap(order))
	var all sync.WaitGroup
	all.Go(func() { feed(ctx, t, queue, order) })
	for range workers {
		all.Go(func() {
			for k := range queue {
				if ctx.Err() == nil { // otherwise nobody waits for it
					k.fill(ctx, t, o, old)
				}
				close(k.done)
			}
		})
	}
	defer all.Wait() // after stop, so that no worker waits for the writer
	defer stop()
	for k := range order {
		select {
		case <-k.done:
		case <-ctx.Done():
			return tally, ctx.Err()
		}
		if err := ctx.Err(); err != nil {
			return tally, err
		}
		if err := k.write(out, o, &tally); err != nil {
			return tally, err
		}
		old.give(k.line)
	}
	return tally, ctx.Err()
}

// feed reads the rows; each goes to the writer's queue first, so that the order is that of the input.
func feed(ctx context.Context, t table, queue, order chan<- *task) {
	defer close(order)
	defer close(queue)
	for {
		r, err := t.next()
		if errors.Is(err, io.EOF) {
			return
		}
		k := &task{row: r, err: err, done: make(chan struct{})}
		select {
		case order <- k:
		case <-ctx.Done():
			return
		}
		if err != nil {
			close(k.done)
			return
		}
		select {
		case queue <- k:
		case <-ctx.Done():
			return
		}
	}
}

// fill computes the row's line of the output.
func (k *task) fill(ctx context.Context, t table, o *Options, used spent) {
	k.row.lacking()
	if k.row.fault == nil {
		var card calc.Card
		if card, k.err = o.Solve(ctx, k.row.job, k.row.source); k.err == nil {
			k.line, k.err = t.answer(used.take(), &k.row, &card)
			return
		}
		if ctx.Err() != nil {
			return
		}
		what, hint := o.Explain(k.err)
		k.row.fail("", what, hint)
		k.err = nil
	}
	if o.KeepGoing {
		k.line = t.refusal(used.take(), &k.row)
	}
}

// write writes a finished line.
func (k *task) write(out io.Writer, o *Options, tally *Tally) error {
	if k.err != nil {
		return k.err
	}
	if f := k.row.fault; f != nil {
		if !o.KeepGoing {
			return f
		}
		tally.Bad++
		if o.Bad != nil {
			o.Bad(f)
		}
	} else {
		tally.Answered++
	}
	if _, err := out.Write(k.line); err != nil {
		return err
	}
	if o.Done != nil {
		o.Done(tally.Kept + tally.Answered + tally.Bad)
	}
	return nil
}
