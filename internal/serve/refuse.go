package serve

import (
	"encoding/binary"
	"io"
	"net"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

// mostTurned is how many refused connections get a message at once; more are only closed, so that many refused clients
// take no resources from the guests.
const mostTurned = 32

// turnAway says why a connection is not served (RFC 4253, 11.1): clients show the text. What the client sends
// meanwhile is read, since closing a connection with unread input loses what was sent.
func (s *server) turnAway(conn net.Conn, why string) {
	s.meters.refused(why).Inc()
	select {
	case s.turning <- struct{}{}:
		defer func() { <-s.turning }()
	default:
		return
	}
	s.knocks.Do(func() { s.log.Info("connection refused", "why", why) })
	_ = conn.SetDeadline(time.Now().Add(time.Second))
	if _, err := conn.Write(append([]byte("SSH-2.0-brazebooth\r\n"), goodbye("brazebooth: "+why+
		"; try again in a minute")...)); err != nil {
		return
	}
	if tcp := tcpOf(conn); tcp != nil {
		_ = tcp.CloseWrite()
	}
	_, _ = io.CopyN(io.Discard, conn, 4<<10)
}

// goodbye is the packet that ends a connection before keys were agreed (RFC 4253, 6 and 11.1).
func goodbye(why string) []byte {
	const tooMany = 12 // SSH_DISCONNECT_TOO_MANY_CONNECTIONS
	payload := gossh.Marshal(&struct {
		Reason        uint32 `sshtype:"1"`
		Why, Language string
	}{tooMany, why, ""})
	padding := 4 + 8 - (5+len(payload)+4)%8
	packet := binary.BigEndian.AppendUint32(nil, uint32(1+len(payload)+padding))
	packet = append(append(packet, byte(padding)), payload...)
	return append(packet, make([]byte, padding)...)
}
