package media

// The languages of XML that a drawing may have names of.
const (
	svgSpace  = "http://www.w3.org/2000/svg"
	linkSpace = "http://www.w3.org/1999/xlink"
	xmlSpace  = "http://www.w3.org/XML/1998/namespace"
)

// silent are languages in which drawing programs note things for themselves. No browser does anything with them.
var silent = map[string]bool{
	"http://www.w3.org/1999/02/22-rdf-syntax-ns#":            true,
	"http://creativecommons.org/ns#":                         true,
	"http://web.resource.org/cc/":                            true,
	"http://purl.org/dc/elements/1.1/":                       true,
	"http://purl.org/dc/terms/":                              true,
	"http://www.inkscape.org/namespaces/inkscape":            true,
	"http://sodipodi.sourceforge.net/DTD/sodipodi-0.dtd":     true,
	"http://ns.adobe.com/AdobeIllustrator/10.0/":             true,
	"http://www.serif.com/":                                  true,
	"http://www.bohemiancoding.com/sketch/ns":                true,
	"http://schemas.microsoft.com/visio/2003/SVGExtensions/": true,
}

// elements are those of SVG that draw, or say what is drawn.
var elements = set(`svg g defs symbol use switch title desc metadata style
	path rect circle ellipse line polyline polygon text tspan textPath image marker
	linearGradient radialGradient stop pattern clipPath mask filter
	feBlend feColorMatrix feComponentTransfer feComposite feConvolveMatrix feDiffuseLighting feDisplacementMap
	feDistantLight feDropShadow feFlood feFuncA feFuncB feFuncG feFuncR feGaussianBlur feMerge feMergeNode feMorphology
	feOffset fePointLight feSpecularLighting feSpotLight feTile feTurbulence`)

// plainText are attributes that no browser takes for a style, whatever is in them.
var plainText = set(`id class d points lang title values`)

// inertLink are attributes of a link in a drawing beside the place that it leads to.
var inertLink = set(`type role arcrole title show actuate`)

// reasons say why an element that people may miss is not among them.
var reasons = map[string]string{
	"script":           ": a browser runs what is in it",
	"handler":          ": a browser runs what is in it",
	"listener":         ": a browser runs what it names",
	"foreignObject":    ": there can be a web page in it",
	"iframe":           ": it shows another page",
	"object":           ": it shows another file",
	"embed":            ": it shows another file",
	"a":                ": a link in it can run a script; put the link on the page",
	"animate":          ": it can change where a link leads, and nothing on the site moves",
	"set":              ": it can change where a link leads, and nothing on the site moves",
	"animateMotion":    ": nothing on the site moves",
	"animateTransform": ": nothing on the site moves",
	"feImage":          ": it shows another file",
	"math":             ": only what draws may be in it",
}

// attributes are those of SVG 2 without those that run something, and the properties of a style that may be attributes.
var attributes = set(`
	id class style lang role tabindex version baseProfile viewBox preserveAspectRatio width height x y dx dy x1
	x2 y1 y2 cx cy r rx ry fx fy fr d points pathLength transform rotate textLength lengthAdjust startOffset
	method spacing side path media type title systemLanguage requiredFeatures requiredExtensions enable-
	background zoomAndPan gradientUnits gradientTransform spreadMethod offset patternUnits patternContentUnits
	patternTransform clipPathUnits maskUnits maskContentUnits markerUnits markerWidth markerHeight orient refX
	refY filterUnits primitiveUnits filterRes in in2 result mode values tableValues slope intercept amplitude
	exponent operator k1 k2 k3 k4 order kernelMatrix divisor bias targetX targetY edgeMode kernelUnitLength
	preserveAlpha surfaceScale diffuseConstant specularConstant specularExponent limitingConeAngle scale
	xChannelSelector yChannelSelector azimuth elevation stdDeviation radius z pointsAtX pointsAtY pointsAtZ
	baseFrequency numOctaves seed stitchTiles alignment-baseline baseline-shift clip clip-path clip-rule color
	color-interpolation color-interpolation-filters color-profile color-rendering cursor direction display
	dominant-baseline fill fill-opacity fill-rule filter flood-color flood-opacity font font-family font-size
	font-size-adjust font-stretch font-style font-variant font-weight glyph-orientation-horizontal glyph-
	orientation-vertical image-rendering isolation kerning letter-spacing lighting-color marker marker-end
	marker-mid marker-start mask mask-type mix-blend-mode opacity overflow paint-order pointer-events shape-
	rendering solid-color solid-opacity stop-color stop-opacity stroke stroke-dasharray stroke-dashoffset
	stroke-linecap stroke-linejoin stroke-miterlimit stroke-opacity stroke-width text-anchor text-align text-
	decoration text-overflow text-rendering transform-origin unicode-bidi vector-effect visibility white-space
	word-spacing writing-mode`)
