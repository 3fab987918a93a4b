package main

func runScale(a *app, o *options, args []string) error { return usagef("", "scale: soon") }
