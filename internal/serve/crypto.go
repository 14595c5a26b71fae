package serve

import (
	"time"

	"charm.land/ssh"
	gossh "golang.org/x/crypto/ssh"

	"brazebooth/internal/plain"
)

// algorithms are those of golang.org/x/crypto without SHA-1, CBC, groups under 2048 bits and, in the key exchange,
// curves of NIST. The key exchange that also withstands a quantum computer comes first.
func algorithms() *gossh.ServerConfig {
	c := &gossh.ServerConfig{MaxAuthTries: 6,
		PublicKeyAuthAlgorithms: append(curves[:], gossh.KeyAlgoRSASHA512, gossh.KeyAlgoRSASHA256)}
	c.KeyExchanges = []string{gossh.KeyExchangeMLKEM768X25519, gossh.KeyExchangeCurve25519}
	c.Ciphers = []string{gossh.CipherChaCha20Poly1305, gossh.CipherAES256GCM, gossh.CipherAES128GCM}
	c.MACs = []string{gossh.HMACSHA256ETM, gossh.HMACSHA512ETM}
	return c
}

// admit sets how clients log in: by key only or, if the shop is open, also without one.
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
		case s.Open: // writers need a key; a client without one is asked nothing
			c.KeyboardInteractiveCallback = func(
				gossh.ConnMetadata, gossh.KeyboardInteractiveChallenge,
			) (*gossh.Permissions, error) {
				return &gossh.Permissions{}, nil
			}
		}
		return c
	}
}

// guessDelay slows down clients that try many keys.
const guessDelay = 100 * time.Millisecond
