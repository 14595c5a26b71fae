package serve

import (
	"context"
	"encoding/json"
	"fmt"
	"net"
	"net/http"
	"time"

	"brazebooth/internal/mistake"

	"github.com/VictoriaMetrics/metrics"
)

// meters are the server's metrics, in the text format of Prometheus.
type meters struct {
	set               *metrics.Set
	server            *server
	bytesIn, bytesOut *metrics.Counter
	refusedKeys       *metrics.Counter
	panics            *metrics.Counter
}

func newMeters(s *server) *meters {
	set := metrics.NewSet()
	m := &meters{set: set, server: s,
		bytesIn: set.NewCounter("brazebooth_bytes_in_total"), bytesOut: set.NewCounter("brazebooth_bytes_out_total"),
		refusedKeys: set.NewCounter("brazebooth_keys_refused_total"),
		panics:      set.NewCounter("brazebooth_session_failures_total")}
	set.NewGauge("brazebooth_sessions", func() float64 { return float64(s.seats.taken()) })
	set.NewGauge("brazebooth_connections", func() float64 { return float64(s.gate.taken()) })
	set.NewGauge("brazebooth_log_lines_lost", func() float64 { return float64(lostLines.Load()) })
	return m
}

func (m *meters) refused(why string) *metrics.Counter {
	return m.set.GetOrCreateCounter(fmt.Sprintf("brazebooth_refused_total{why=%q}", why))
}

func (m *meters) ended(command string, code int, took time.Duration) {
	m.set.GetOrCreateCounter(fmt.Sprintf("brazebooth_sessions_total{command=%q,code=\"%d\"}", command, code)).Inc()
	m.set.GetOrCreateHistogram(fmt.Sprintf("brazebooth_session_seconds{command=%q}", command)).Update(took.Seconds())
}

// showMeters serves the metrics and the health page on a loopback address.
func (s *server) showMeters(ctx context.Context) (stop func(), err error) {
	if s.Metrics == "" {
		return func() {}, nil
	}
	l, err := new(net.ListenConfig).Listen(ctx, "tcp", s.Metrics)
	if err != nil {
		return nil, mistake.New(err.Error(), "another address: --metrics 127.0.0.1:9223")
	}
	mux := http.NewServeMux()
	mux.HandleFunc("GET /metrics", func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/plain; version=0.0.4")
		s.meters.set.WritePrometheus(w)
		metrics.WriteProcessMetrics(w)
	})
	mux.HandleFunc("GET /healthz", s.health)
	h := &http.Server{Handler: mux, ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 5 * time.Second,
		WriteTimeout: 10 * time.Second, MaxHeaderBytes: 8 << 10}
	go func() { _ = h.Serve(l) }()
	return func() { _ = h.Close() }, nil
}

// health reports whether sessions can be served and the book can be read.
func (s *server) health(w http.ResponseWriter, r *http.Request) {
	ctx, stop := context.WithTimeout(r.Context(), 3*time.Second)
	defer stop()
	page := struct {
		Status   string `json:"status"`
		Book     string `json:"book"`
		Sessions int    `json:"sessions"`
	}{"ok", "ok", s.seats.taken()}
	code := http.StatusOK
	if s.book == "" {
		page.Book = "none"
	} else if err := s.deps.Healthy(ctx, s.book); err != nil {
		page.Book, page.Status, code = "cannot be read", "book", http.StatusServiceUnavailable
	}
	s.mu.Lock()
	if s.down {
		page.Status, code = "going down", http.StatusServiceUnavailable
	}
	s.mu.Unlock()
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(code)
	_ = json.NewEncoder(w).Encode(page)
}
