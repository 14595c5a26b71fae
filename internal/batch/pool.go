package batch

import (
	"context"
	"errors"
	"io"
	"sync"

	"brazebooth/calc"
)

// task is a row in progress: a goroutine sets line and closes done, for which the writer waits.
type task struct {
	row  row
	line []byte
	err  error // ends the batch
	done chan struct{}
}

// answer computes the rows on all cores and writes the lines in the rows' order. Only a few rows for each worker are in
// memory. stop cancels the context, also for reading, so that a row that ends the batch does not wait for the next one.
func answer(ctx context.Context, stop context.CancelFunc, t table, out io.Writer, o *Options, tally Tally) (Tally,
	error) {
	order := make(chan *task, 4*max(1, o.Workers))
	var all sync.WaitGroup
	all.Go(func() { feed(ctx, t, o, order, &all) })
	defer all.Wait() // runs after stop, so that no goroutine waits for the writer
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
	}
	return tally, ctx.Err()
}

// feed reads the rows and computes as many at a time as there are workers. Each row goes to the writer's queue first,
// which keeps the order of the input.
func feed(ctx context.Context, t table, o *Options, order chan<- *task, all *sync.WaitGroup) {
	defer close(order)
	working := make(chan struct{}, max(1, o.Workers))
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
		case working <- struct{}{}:
		case <-ctx.Done():
			return
		}
		all.Go(func() {
			if ctx.Err() == nil { // otherwise the result is not needed
				k.fill(ctx, t, o)
			}
			close(k.done)
			<-working
		})
	}
}

func (k *task) fill(ctx context.Context, t table, o *Options) {
	k.row.lacking()
	if k.row.fault == nil {
		var card calc.Card
		if card, k.err = o.Solve(ctx, k.row.job, k.row.source); k.err == nil {
			k.line, k.err = t.answer(&k.row, &card)
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
		k.line = t.refusal(&k.row)
	}
}

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
