package serve

import (
	"time"

	"charm.land/ssh"
	gossh "golang.org/x/crypto/ssh"

	"brazebooth/internal/plain"
)

// algorithms names what the server speaks: of what golang.org/x/crypto offers, nothing with SHA-1, with CBC, with a
// group under 2048 bits or on a curve of NIST. The key exchange that also withstands a quantum computer comes first.
func algorithms() *gossh.ServerConfig {
	c := &gossh.ServerConfig{
		MaxAuthTries: 6,
		PublicKeyAuthAlgorithms: []string{gossh.KeyAlgoED25519, gossh.KeyAlgoSKED25519, gossh.KeyAlgoSKECDSA256,
			gossh.KeyAlgoECDSA256, gossh.KeyAlgoECDSA384, gossh.KeyAlgoECDSA521,
			gossh.KeyAlgoRSASHA512, gossh.KeyAlgoRSASHA256},
	}
	c.KeyExchanges = []string{gossh.KeyExchangeMLKEM768X25519, gossh.KeyExchangeCurve25519}
	c.Ciphers = []string{gossh.CipherChaCha20Poly1305, gossh.CipherAES256GCM, gossh.CipherAES128GCM}
	c.MACs = []string{gossh.HMACSHA256ETM, gossh.HMACSHA512ETM}
	return c
}

// admit lets clients in: by key only, or where the shop is open also without one.
func (s *server) admit() func(ssh.Context) *gossh.ServerConfig {
	return func(ssh.Context) *gossh.ServerConfig {
		c := algorithms()
		c.AuthLogCallback = func(conn gossh.ConnMetadata, method string, err error) {
			if err != nil && method != "none" {
				s.meters.refusedKeys.Inc()
				s.guesses.Do(func() {
					s.log.Info("not let in", "from", addressOf(conn.RemoteAddr()), "method", plain.Line(method, 20))
				})
				time.Sleep(guessDelay)
			}
		}
		switch {
		case s.Open && s.Writers == "":
			c.NoClientAuth = true
		case s.Open: // a key tells writers from others; a client without one is asked nothing
			c.KeyboardInteractiveCallback = func(
				gossh.ConnMetadata, gossh.KeyboardInteractiveChallenge,
			) (*gossh.Permissions, error) {
				return &gossh.Permissions{}, nil
			}
		}
		return c
	}
}

// guessDelay makes trying many keys slow.
const guessDelay = 100 * time.Millisecond
