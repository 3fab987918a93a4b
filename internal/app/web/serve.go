package web

import (
	"context"
	"crypto/sha256"
	"encoding/binary"
	"errors"
	"fmt"
	"net"
	"net/http"
	"path/filepath"
	"time"

	"jarmark/internal/app/job"
)

// Limits on how long a request may take: the page talks to itself on one
// machine, so these only end what is stuck. Writing has room for a long make.
const (
	readTimeout  = 30 * time.Second
	writeTimeout = 10 * time.Minute
	idleTimeout  = 2 * time.Minute
	goodbye      = 3 * time.Second
)

// Serve shows the page of a folder on 127.0.0.1 until ctx ends. Port 0 takes
// the folder's own: the same each time, so that a page left open finds it again
// after a restart. Options.Open is told the address, with the key in it.
func Serve(ctx context.Context, dir string, port int, env *job.Env, o Options) error {
	if o.Key == "" {
		o.Key = freshToken()
	}
	if o.Token == "" {
		o.Token = derived(o.Key, "write")
	}
	h, err := New(dir, env, o)
	if err != nil {
		return err
	}
	ln, err := listen(dir, port)
	if err != nil {
		return err
	}
	_, at, err := net.SplitHostPort(ln.Addr().String())
	if err != nil {
		return err
	}
	d := newDoor(o.Key, at, h)
	open := o.Open
	o.Open = func(url string) {
		if open != nil {
			open(url + "?" + keyField + "=" + o.Key)
		}
		if o.Browse != nil {
			o.Browse(url + "?" + keyField + "=" + d.ticket())
		}
	}
	return serve(ctx, ln, d, o)
}

// Ports of folders lie below those the systems give out by themselves.
const firstPort, ports, portTries = 20000, 10000, 8

// listen takes the port asked for; for 0 the folder's own, the next ones where
// that is taken, and at last any that is free.
func listen(dir string, port int) (ln net.Listener, err error) {
	if port != 0 {
		return net.Listen("tcp", fmt.Sprintf("127.0.0.1:%d", port))
	}
	abs, err := filepath.Abs(dir)
	if err != nil {
		return nil, err
	}
	sum := sha256.Sum256([]byte(abs))
	own := int(binary.BigEndian.Uint32(sum[:4]) % ports)
	for i := range portTries {
		if ln, err = net.Listen("tcp", fmt.Sprintf("127.0.0.1:%d", firstPort+(own+i)%ports)); err == nil {
			return ln, nil
		}
	}
	return net.Listen("tcp", "127.0.0.1:0")
}

// Listen answers with a handler on 127.0.0.1 until ctx ends.
func Listen(ctx context.Context, port int, h http.Handler, o Options) error {
	ln, err := net.Listen("tcp", fmt.Sprintf("127.0.0.1:%d", port))
	if err != nil {
		return err
	}
	return serve(ctx, ln, h, o)
}

func serve(ctx context.Context, ln net.Listener, h http.Handler, o Options) error {
	srv := &http.Server{Handler: h, ReadHeaderTimeout: readTimeout, ReadTimeout: readTimeout,
		WriteTimeout: writeTimeout, IdleTimeout: idleTimeout, MaxHeaderBytes: 1 << 16, ErrorLog: o.Log,
		BaseContext: func(net.Listener) context.Context { return ctx }}
	if o.Open != nil {
		o.Open("http://" + ln.Addr().String() + "/")
	}
	ended := make(chan error, 1)
	go func() { ended <- srv.Serve(ln) }()
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	// ctx has ended, so the last requests get a moment of their own.
	last, cancel := context.WithTimeout(context.WithoutCancel(ctx), goodbye)
	defer cancel()
	if err := srv.Shutdown(last); err != nil && !errors.Is(err, context.DeadlineExceeded) {
		return err
	}
	return nil
}
