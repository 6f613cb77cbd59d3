package web

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"strconv"
	"time"
)

// grace is how long a stop waits for answers that are being given.
const grace = 10 * time.Second

// ErrNotLoopback refuses an address that others could reach.
var ErrNotLoopback = errors.New("the pages are for this computer only: an address that others can reach needs passphrases, which this version does not have")

// ErrNoAddress refuses what cannot be read as a host and a port.
var ErrNoAddress = errors.New("this is no address")

// Listen opens the address; only one of this machine's own is taken.
func Listen(ctx context.Context, address string) (net.Listener, error) {
	host, port, err := net.SplitHostPort(address)
	if err != nil {
		return nil, fmt.Errorf("%w: %q", ErrNoAddress, address)
	}
	if host == "localhost" {
		host = "127.0.0.1"
	}
	ip := net.ParseIP(host)
	if ip == nil || !ip.IsLoopback() {
		return nil, ErrNotLoopback
	}
	var config net.ListenConfig
	return config.Listen(ctx, "tcp", net.JoinHostPort(host, port))
}

// HostsOf are the names under which a browser on this machine reaches a
// listener.
func HostsOf(l net.Listener) []string {
	address, ok := l.Addr().(*net.TCPAddr)
	if !ok {
		return nil
	}
	port := strconv.Itoa(address.Port)
	hosts := []string{net.JoinHostPort("localhost", port), net.JoinHostPort(address.IP.String(), port)}
	if address.Port == 80 {
		hosts = append(hosts, "localhost", address.IP.String())
	}
	return hosts
}

// Serve answers until ctx ends, then lets the answers that are being given be
// finished.
func Serve(ctx context.Context, l net.Listener, h http.Handler) error {
	server := &http.Server{
		Handler:           h,
		ReadHeaderTimeout: 5 * time.Second,
		ReadTimeout:       2 * longest,
		WriteTimeout:      2 * longest,
		IdleTimeout:       2 * time.Minute,
		MaxHeaderBytes:    32 << 10,
	}
	failed := make(chan error, 1)
	go func() { failed <- server.Serve(l) }()
	select {
	case err := <-failed:
		return err
	case <-ctx.Done():
	}
	stop, cancel := context.WithTimeout(context.WithoutCancel(ctx), grace)
	defer cancel()
	if err := server.Shutdown(stop); err != nil {
		return server.Close()
	}
	return nil
}
