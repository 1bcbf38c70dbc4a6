// Package fact holds what calculations take from the trade, each thing once and by an id: the publications that figures
// are from, the hazards that must be told, and the materials that must not meet.
//
// It owns the tables and their words. It works nothing out, knows no sheet and no page, and imports nothing of ours:
// sheets, pages and checks ask it.
package fact
