package mistake

import (
	"errors"
	"fmt"
	"io"
	"testing"
)

func TestError(t *testing.T) {
	err := In("metal_2", "no metal is called tin", "type copper")
	if got := err.Error(); got != "metal 2: no metal is called tin" {
		t.Error(got)
	}
	wrapped := fmt.Errorf("row 3: %w", err)
	if e := Of(wrapped); e == nil || e.Field != "metal_2" || e.Hint != "type copper" {
		t.Errorf("%+v", e)
	}
	if e := Of(Within("--metal2", wrapped)); e == nil || e.Error() != "--metal2: no metal is called tin" ||
		e.Hint != "type copper" {
		t.Errorf("%+v", e)
	}
	if Of(io.EOF) != nil || Of(nil) != nil || Within("--metal", io.EOF) != io.EOF || Within("--metal", nil) != nil {
		t.Error("another error is changed")
	}
	if why := (&Error{What: "no file", Cause: io.EOF}); !errors.Is(Within("line 1", why), io.EOF) {
		t.Error("the cause is lost")
	}
}
