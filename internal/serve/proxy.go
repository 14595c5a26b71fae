package serve

import (
	"errors"
	"net"
	"strings"

	"github.com/pires/go-proxyproto"
)

// trust is the policy for PROXY headers: a balancer must name its client. Any other connection counts under its own
// address, and a header that it sends is invalid SSH.
func (s *Settings) trust() (proxyproto.ConnPolicyFunc, error) {
	return proxyproto.PolicyFromRanges(strings.Split(strings.ReplaceAll(s.Proxy, " ", ""), ","), proxyproto.REQUIRE,
		proxyproto.SKIP)
}

// clientNamed accepts a balancer's header (PROXY protocol, sections 2.1 and 2.2) that names a client by a TCP address,
// or that marks the connection as the balancer's own: LOCAL, or UNKNOWN in version 1. That one is served under the
// balancer's address, so that a health check works.
func clientNamed(h *proxyproto.Header) error {
	if h.Command.IsLocal() || h.TransportProtocol == proxyproto.TCPv4 || h.TransportProtocol == proxyproto.TCPv6 {
		return nil
	}
	return errors.New("the header names no client by a TCP address")
}

// unnamed is the error of a balancer's connection that names no client; nil for any other connection.
func unnamed(conn net.Conn) error {
	behind, ok := conn.(*proxyproto.Conn)
	if !ok || behind.ProxyHeader() != nil {
		return nil
	}
	_, err := behind.Read(nil)
	return err
}
