module brazebooth/internal/bench

go 1.26.8

require (
	github.com/creack/pty v1.1.24
	golang.org/x/crypto v0.57.0
)

require golang.org/x/sys v0.50.0 // indirect
