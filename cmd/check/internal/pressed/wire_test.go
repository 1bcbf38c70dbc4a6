package pressed

import (
	"reflect"
	"slices"
	"strings"
	"testing"
)

// What is read of the data block is in the list that the program makes.
func TestBlockReadsWhatIsAgreed(t *testing.T) {
	for of, agreed := range map[reflect.Type][]string{
		reflect.TypeFor[data]():                      agreed.Data,
		reflect.TypeFor[data]().Field(1).Type.Elem(): agreed.Sheets,
		reflect.TypeFor[data]().Field(3).Type.Elem(): agreed.Tables,
	} {
		for i := range of.NumField() {
			field := of.Field(i)
			name := strings.ToLower(field.Name)
			if tag := field.Tag.Get("json"); tag != "" {
				name = tag
			}
			if !slices.Contains(agreed, name) {
				t.Errorf("the check reads the field %s, and a page has only %v", name, agreed)
			}
		}
	}
	if len(agreed.Inputs) == 0 || len(agreed.Outputs) == 0 {
		t.Errorf("no attribute names a cell: %+v", agreed)
	}
}
