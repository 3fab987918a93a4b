package main

func runServe(a *app, o *options, args []string) error { return usagef("", "serve: soon") }
