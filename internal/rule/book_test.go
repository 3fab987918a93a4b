package rule

import "testing"

func TestLoad(t *testing.T) {
	if _, err := Load(); err != nil {
		t.Fatal(err)
	}
}
