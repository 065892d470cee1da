package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"time"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/terminal"
)

// quietFor is how long a search runs before anything is said about it.
const quietFor = 2 * time.Second

// interruptible gives a context that Ctrl-C ends, once; the next one ends the
// program. A search that takes long says so on a terminal, until stop is called.
func (a *app) interruptible(doing string) (ctx context.Context, stop func()) {
	ctx, release := signal.NotifyContext(context.Background(), os.Interrupt)
	context.AfterFunc(ctx, release)
	if !terminal.Is(a.stderr) || a.quiet {
		return ctx, release
	}
	done, ended := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(ended)
		a.progress(ctx, doing, done)
	}()
	return ctx, func() {
		close(done)
		<-ended
		release()
	}
}

// progress rewrites one line of the terminal every second, and takes it away.
func (a *app) progress(ctx context.Context, doing string, done <-chan struct{}) {
	const wipe = "\r\x1b[K"
	began, said := time.Now(), false
	tick := time.NewTicker(time.Second)
	defer tick.Stop()
	for {
		select {
		case <-done:
			if said {
				fmt.Fprint(a.stderr, wipe)
			}
			return
		case <-ctx.Done():
			ctx = context.Background()
			doing = "ending"
		case <-tick.C:
		}
		if took := time.Since(began); took >= quietFor {
			said = true
			fmt.Fprintf(a.stderr, "%s%s for %d s; Ctrl-C ends with the best so far", wipe, doing, int(took.Seconds()))
		}
	}
}
