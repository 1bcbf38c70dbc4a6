// Package fact holds what calculations take from the trade, each thing once and by an id: the publications that figures
// are from, the hazards that must be told, and the materials that must not meet.
//
// It owns the tables; their texts are in calc/words. It works nothing out, and knows no sheet and no page: they and the
// checks ask it.
package fact
