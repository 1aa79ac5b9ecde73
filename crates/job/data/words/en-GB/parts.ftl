# What is put into remarks and labels: reasons, elements, things done.

## Advice that several remarks share

proved-by-test = have it designed and proved by test under licensed practice and your local code
compare-the-volume = mended; compare the volume with that of your drawing
mend-before-printing = too little to matter for the metal; mend it before printing the pattern

## What was mended in a mesh

points-joined = { $count } close points joined
collapsed-dropped = { $count } collapsed facets dropped
doubles-dropped = { $count } doubled facets dropped
needles-mended = { $count } facets without area mended
slits-zipped = { $count } slits closed
holes-closed = { $count } small holes closed
facets-turned = { $count } facets turned
shells-turned = { $count } shells turned outside out
flakes-dropped = { $count } flakes without thickness dropped

## Why a flask does not take the patterns

no-flasks = the shop has no flask: list your own in shop.toml under [[flask]]
flask-unknown = flask "{ $flask }" is not in the shop's list; there is: { $known }
flask-too-small = flask "{ $flask }" is too small for { $count } pattern(s) with { $wall } of sand at the walls: wanted inside { $inside }, cope { $cope }, drag { $drag }
flasks-too-small = all of your flasks are too small for { $count } pattern(s) with { $wall } of sand at the walls: wanted inside { $inside }, cope { $cope }, drag { $drag }

## Elements, by their symbols

element-C = carbon
element-Si = silicon
element-Mn = manganese
element-P = phosphorus
element-S = sulphur
element-Cr = chromium
element-Fe = iron
element-Al = aluminium
element-Mg = magnesium
element-Cu = copper
element-Zn = zinc
element-Sn = tin
element-Pb = lead
element-Ni = nickel
element-Ti = titanium
element-Sb = antimony
element-Cd = cadmium
element-Bi = bismuth
element-CE = carbon equivalent
