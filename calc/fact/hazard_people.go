package fact

// peopleHazards can harm people.
var peopleHazards = []Hazard{
	{
		ID: "acid", Name: Text{"acid", "ácido"}, Signal: Danger,
		Says: Text{
			"Strong acid burns skin and eyes, and eats brass, bronze and plain steel. Pour acid into water, never water into " +
				"acid. Read the label, follow the local code, and leave it to people who are trained for it.",
			"El ácido fuerte quema la piel y los ojos, y come el latón, el bronce y el acero común. Eche el ácido al " +
				"agua, nunca el agua al ácido. Lea la etiqueta, siga el código local y déjelo a gente capacitada.",
		},
		Aid: Text{
			"On skin or in eyes: flush with water at once, for 30 minutes, and call 911.",
			"En la piel o los ojos: enjuague de inmediato con agua, 30 minutos, y llame al 911.",
		},
		Sources: []string{"nc-sulfuric", "niosh-pocket"},
	},
	{
		ID: "ammonia", Name: Text{"ammonia", "amoníaco"}, Signal: Danger,
		Says: Text{
			"Ammonia gas burns eyes, skin and lungs, and can kill. Read the label, follow the local code, keep clean water at " +
				"hand, and leave it to trained applicators.",
			"El gas de amoníaco quema los ojos, la piel y los pulmones, y puede matar. Lea la etiqueta, siga el código " +
				"local, tenga agua limpia a la mano y déjelo a aplicadores capacitados.",
		},
		Aid: Text{
			"If breathed: get upwind into fresh air and call 911 at once. On skin or in eyes: flush with water at once, " +
				"for 15 minutes or more, and call 911.",
			"Si lo respira: váyase contra el viento, a donde haya aire fresco, y llame al 911 de inmediato. En la piel o los " +
				"ojos: enjuague de inmediato con agua, 15 minutos o más, y llame al 911.",
		},
		Sources: []string{"iowa-ammonia", "minnesota-ammonia", "niosh-pocket", "north-dakota-ammonia"},
	},
	{
		ID: "pressure", Name: Text{English: "a gas under pressure"}, Signal: Danger,
		Says: Text{English: "This material is kept as a liquid under high pressure. Where a hose, a valve or a fitting " +
			"fails, it sprays out, and freezes and burns skin and eyes. Use only gear that is made for it and has been " +
			"inspected, and never open a part that is under pressure."},
		Sources: []string{"niosh-pocket", "iowa-ammonia"},
	},
	{
		ID: "fire", Name: Text{English: "a nitrate that feeds a fire"}, Signal: Warning,
		Says: Text{English: "This material may make a fire fiercer, also where a solution of it has dried up. Keep it from " +
			"fuel, oil, sawdust and heat, and store it as the local code says."},
		Sources: []string{"epa-ammonium-nitrate", "noaa-potassium-nitrate", "common-practice"},
	},
	{
		ID: "backflow", Name: Text{"injection", "inyección"}, Signal: Warning,
		Says: Text{
			"Feed must never run back into a well or a pipe that people drink from. Have the backflow protection that the " +
				"local code asks for, with a stop that shuts the injector off when the pump stops, and test it each season.",
			"El abono nunca debe regresar a un pozo ni a una tubería de la que bebe la gente. Tenga la protección contra " +
				"reflujo que pide el código local, con un paro que cierre el inyector cuando la bomba se detiene, y pruébela " +
				"cada temporada.",
		},
		Sources: []string{"kansas-backflow", "ufifas-fertigation"},
	},
	{
		ID: "drinking-water", Name: Text{"nitrate in drinking water", "nitrato en el agua de beber"}, Signal: Warning,
		Says: Text{
			"Nitrate in drinking water can make babies very ill, and may harm pregnant women. Have the household well tested, " +
				"and give neither of them water over the limit. Boiling makes it worse. Ask your county health office.",
			"El nitrato en el agua de beber puede enfermar gravemente a los bebés y puede hacer daño a las mujeres " +
				"embarazadas. Haga analizar el pozo de la casa, y no les dé agua que pasa el límite. Hervirla lo empeora. " +
				"Pregunte en la oficina de salud del condado.",
		},
		Sources: []string{"epa-nitrate", "title-22-nitrate"},
	},
	{
		ID: "chlorine", Name: Text{"chlorine", "cloro"}, Signal: Danger,
		Says: Text{
			"Chlorine and bleach burn eyes, skin and lungs. With acid or ammonia they make a poison gas. Use them alone, " +
				"never with fertilizer, acid or ammonia, in lines that were flushed, with goggles and gloves, as the label says.",
			"El cloro y el blanqueador queman los ojos, la piel y los pulmones. Con ácido o amoníaco forman un gas " +
				"venenoso. Úselos solos, nunca con abono, ácido ni amoníaco, en líneas ya " +
				"enjuagadas, con gafas y guantes, como dice la etiqueta.",
		},
		Sources: []string{"ifas-chlorine", "niosh-pocket", "common-practice"}, // of labels: never with fertilizer
	},
	{
		ID: "fumigation", Name: Text{"fumigation", "fumigación"}, Signal: Danger,
		Says: Text{
			"Fumigants can kill. Only a licensed applicator may put them on, with the permit that the local code asks for. " +
				"Keep everybody out until the label lets them in.",
			"Los fumigantes pueden matar. Solo un aplicador con licencia puede ponerlos, con el permiso que pide el código " +
				"local. Que nadie entre hasta que la etiqueta lo permita.",
		},
		Sources: []string{"epa-applicators"},
	},
	{
		ID: "raw-manure", Name: Text{"raw manure", "estiércol crudo"}, Signal: Caution,
		Says: Text{
			"Raw manure can carry disease to nuts that are picked up from the ground. Keep the waiting time that your food " +
				"safety rules ask for.",
			"El estiércol crudo puede llevar enfermedades a las nueces que se recogen del suelo. Guarde el tiempo de espera " +
				"que piden sus reglas de inocuidad.",
		},
		Sources: []string{"usda-organic"},
	},
	{
		ID: "nitrate-to-wells", Name: Text{English: "nitrate that goes to groundwater"}, Signal: Caution,
		Says: Text{English: "What has passed the roots is lost to the tree and on its way to groundwater. Mind any shallow " +
			"well nearby that people drink from, and have it tested."},
		Sources: []string{"epa-nitrate"},
	},
}
