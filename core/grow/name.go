package grow

import (
	"fmt"
	"strings"

	"slipfit/core/part"
)

// Lines of products are named by two country words and a number.
var (
	firstWords  = [...]string{"Birch", "Clover", "Dapple", "Elder", "Fennel", "Gorse", "Larch", "Mallow", "Nettle", "Oat", "Plover", "Rowan", "Sorrel", "Tansy", "Vetch", "Yarrow", "Bracken"}
	secondWords = [...]string{"beck", "bough", "combe", "croft", "dene", "garth", "holt", "knoll", "leat", "march", "ness", "pound", "reed", "shaw", "stead", "thorpe", "wick", "yard"}
)

// name gives a part of the same maker a name and an id that no other has: "Birchholt 371 32 GB".
func (g *grower) name(a *part.Article, mark string) {
	for {
		a.Name = fmt.Sprintf("%s%s %d", firstWords[g.IntN(len(firstWords))], secondWords[g.IntN(len(secondWords))], 100+g.IntN(900))
		if mark != "" {
			a.Name += " " + mark
		}
		if a.ID = id(a.Maker + " " + a.Name); !g.taken[a.ID] {
			g.taken[a.ID] = true
			return
		}
	}
}

// id is a title in lower case, its words of ASCII letters and digits joined by hyphens.
func id(title string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(title), func(r rune) bool {
		return (r < 'a' || r > 'z') && (r < '0' || r > '9')
	}), "-")
}
