package web

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
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

// Serve shows the page of a folder on 127.0.0.1 until ctx ends. Port 0 takes a
// free one; Options.Open is told the address.
func Serve(ctx context.Context, dir string, port int, env *job.Env, o Options) error {
	h, err := New(dir, env, o)
	if err != nil {
		return err
	}
	return Listen(ctx, port, h, o)
}

// Listen answers with a handler on 127.0.0.1 until ctx ends.
func Listen(ctx context.Context, port int, h http.Handler, o Options) error {
	ln, err := net.Listen("tcp", fmt.Sprintf("127.0.0.1:%d", port))
	if err != nil {
		return err
	}
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
