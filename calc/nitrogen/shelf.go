package nitrogen

import "acreleaf/calc/sheet"

// Shelf lists the calculations of this package in the order in which a season asks for them.
func Shelf() []*sheet.Sheet {
	return []*sheet.Sheet{
		NitrateBasis, SoilNitrogen, WaterApplied, WaterNitrogen, TreeDensity, BlockTrees, TreeRate, AcreRate,
		CropDemand, BlockNeed, OrganicCredit, UptakeEfficiency, SeasonBudget, UptakeShare,
		MaterialCompare, MaterialAmount, MaterialNitrogen,
		FeedSchedule, BlockMaterial, RootShare, Injection,
		NitrateReach, LeafLevel, Balance,
	}
}
