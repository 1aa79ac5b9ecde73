# Mixes: what each is, what to do in order, and what to mind.

mix-sugar-clay = sand bonded with molasses and calcium bentonite
mix-bentonite = washed sand bonded with sodium bentonite
mix-natural = natural sand as it was dug, or sand with dug clay in it
mix-oil-core = core sand bonded with boiled linseed oil and cereal
mix-silicate-core = core sand bonded with sodium silicate
mix-flour-core = baked core sand of flour and boiled linseed oil

## Steps

mix-step-strew-bentonite = damp the sand, strew the bentonite over it, mix until no grey lump is left
mix-step-spray-in-thirds = spray the water in three goes and keep back the last third
mix-step-mull = mull until no streak is left and two tests ten minutes apart come out alike: oddside sand mull
mix-step-squeeze-before-the-rest = rest it an hour or overnight; squeeze, break, ram a test piece; only then temper the rest
mix-step-flour-oil-water = mix sand and flour, then the oil, then water until it holds
mix-step-bake-till-smoking = bake slowly up to 250 °C until dark and just smoking
mix-step-riddle-and-look-at-the-clay = riddle out stones and roots; look at the clay first: jar, then wash
mix-step-temper-natural = temper a test batch at 7, 8 and 9 % of water and take the best squeeze: figures of bentonite do not hold
mix-step-cereal-oil-water = mix sand and cereal, then the oil; water only after the oil is mixed in
mix-step-bake-till-brown = bake an hour at heat for each 25 mm: 180 to 200 °C, until it is nut brown all through
mix-step-mix-and-gas = mix two minutes, ram at once, gas in bursts of a few seconds and stop when it is firm
mix-step-compare-by-solids = doses of different bottles compare by their solids alone: read soda and silica on the label
mix-step-wash-sand = wash the sand in four or five changes of water, and dry it
mix-step-clay-then-syrup = mix sand and bentonite, damped; then molasses stirred into the water
mix-step-dry-back = the added water is there to ease mixing: dry the mix back to its working temper, by your own good squeeze
mix-step-part-without-flour = part with coloured kitchen powder, never with silica flour; a printed plastic pattern often needs no parting
mix-step-skin-dry = skin dry or bake before pouring, and pour while it is warm

## What to mind

mix-mind-soft-water = hard or salty water spoils sodium bentonite: use rain water
mix-mind-flour-burns = flour in the air of a mixer burns: no flame near
mix-mind-starch-gas = starch and oil give off gas when poured on: vent the core, and pour outdoors
mix-mind-natural-water = natural sands mould at 8 to 9 % of water: do not correct them to 4
mix-mind-oily-rags = rags wet with linseed oil catch fire of themselves: lay them out flat outdoors, or in water
mix-mind-bake-outdoors = bake outdoors or under an exhaust: under-baked cores are gassy inside
mix-mind-silicate-lye = silicate is lye: gloves and goggles, and water at hand for the eyes
mix-mind-carbon-dioxide = carbon dioxide is heavier than air and is not smelt: never gas cores in a pit or a closed room
mix-mind-silicate-out = keep broken silicate cores out of a clay-bonded heap
mix-mind-calcium-bentonite = calcium, not sodium, bentonite
mix-mind-sugar-gas = sugar gives off gas when it is poured on: vent, and pour outdoors
