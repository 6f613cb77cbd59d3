package cli

import (
	"errors"
	"fmt"
	"runtime/debug"
	"time"

	"github.com/spf13/cobra"

	"rootbell/internal/app/web"
)

func serveCommand(s Streams) *cobra.Command {
	var d database
	listen := "127.0.0.1:8420"
	c := &cobra.Command{
		Use:   "serve",
		Short: "The pages, in a browser on this computer",
		Long: "Serves the pages to a browser on this computer until it is stopped with Ctrl-C.\n" +
			"The gardens are kept in one file; 'rootbell backup' copies it.\n" + exits,
		Args: noArguments,
		RunE: func(c *cobra.Command, _ []string) error { return serve(c, s, &d, listen) },
	}
	d.flag(c)
	c.Flags().StringVar(&listen, "listen", listen, "the address, one of this computer's own")
	return c
}

func serve(c *cobra.Command, s Streams, d *database, listen string) error {
	ctx := c.Context()
	l, err := web.Listen(ctx, listen)
	if errors.Is(err, web.ErrNotLoopback) || errors.Is(err, web.ErrNoAddress) {
		return usageError{err.Error(), "use --listen 127.0.0.1:8420, or another port"}
	}
	if err != nil {
		return failedError{"the pages cannot be opened at " + listen + ": " + err.Error(), "another program may use this port, perhaps a Rootbell that still runs: stop it, or take another with --listen 127.0.0.1:8421"}
	}
	defer func() { _ = l.Close() }() // Serve closes it, unless it never came to that
	st, err := d.open(ctx, s)
	if err != nil {
		return err
	}
	defer func() { _ = st.Close() }() // what was saved is saved
	version, _, _ := programVersion()
	pages, err := web.New(web.Options{Store: st, Now: time.Now, Zone: time.Local, Version: version, Data: st.Path(), Hosts: web.HostsOf(l)})
	if err != nil {
		return err
	}
	if _, err := fmt.Fprintf(s.Out, "Rootbell is at http://%s/\nThe gardens are in %s\nStop it with Ctrl-C.\n", l.Addr(), st.Path()); err != nil {
		return err
	}
	return web.Serve(ctx, l, pages)
}

// programVersion is what the build knows of itself.
func programVersion() (version, goVersion, commit string) {
	version, goVersion, commit = "unknown", "unknown", "unknown"
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return version, goVersion, commit
	}
	version, goVersion = info.Main.Version, info.GoVersion
	for _, setting := range info.Settings {
		if setting.Key == "vcs.revision" {
			commit = setting.Value
		}
	}
	return version, goVersion, commit
}
