# What stands on paper: pour sheet, pour card, cut templates. A label at the left of a row
# has some 14 letters before it is broken into two lines.

## On every paper

date = Date
# Under which conditions any figure here may be used.
limits = Laws and sources of every figure: workings.pdf. From tables, sums and models; bands are not guarantees. Local codes and licensed practice come first. Lifting, brake, pressure parts: prove by test.
# Printed at the foot of each paper and at the end of each plan in a language that no founder who was
# brought up in it has read. Nobody needs it in English.
unread = { "" }
# Printed at the head of what is shown in English to readers of another language.
in-english = { "" }
between = { $low } to { $high }
paper-title = { $paper }: { $job }
check-bar-upper = Check the print with a rule: the upper bar is 100 mm long,
check-bar-lower = the lower bar 4 in.

## The pour sheet

sheet-title = Pour sheet
sheet-stop = STOP: do not pour this job as it stands
sheet-red-lines = Red lines: tick each before you melt
sheet-sources = Sources:
sheet-code = The bench card of this sheet, or its figures, for a phone.
level-stop = Stop
level-caution = Caution
level-note = Note
remarks-more = and { $count } more: oddside plan tells { $count ->
    [one] it
   *[other] them
}.
remarks-left-off = { $count } remarks: oddside plan tells { $count ->
    [one] it
   *[other] them
}.

red-line-dry = Mould, cores, tools, ingot mould dry and warm
red-line-floor = Floor of dry sand; a clear way to the mould
red-line-clothes = Leather boots, face shield, no synthetics
red-line-fume = Outdoors or hooded; fume mask; never alone
red-line-onlookers = Onlookers at least 2 m away; a stop word
red-line-quartz = Sand damp or a dust mask: quartz harms lungs

blank-sand = Sand reading
blank-heat = Temperature or cue
blank-seconds = Seconds
blank-weather = Weather
blank-happened = What happened
blank-photo = Photo number

block-metal = Metal and charge
block-sand = Sand and flask
block-pattern = Pattern
block-mould = Mould and rigging
block-weights = Weights on the cope
block-pour = Pour

row-metal = Metal
row-one-casting = One casting
row-each-casting = Each casting
row-charge = Charge
row-crucible = Crucible
row-flask = Flask
row-sand = Sand ready
row-larger = Larger by
row-longest = Longest side
row-modulus = Heaviest modulus
row-sprue-foot = Sprue foot Ø
row-cut-with = cut with
row-sprue-top = Sprue top Ø
row-runner = Runner, in all
row-gates = Gates, in all
row-feeder-diameter = Feeder Ø
row-feeder = Feeder
row-lay-on = Lay on
row-irons = Take
row-pour-at = Pour at
row-fill-in = Fill in
row-open-after = Open after

note-poured = { $poured } poured in all
note-rammed = { $sand } of it rammed into the flask
note-frozen = { $time } until it is frozen
note-feeder = as high as wide, on the heaviest section
note-lift = { $lift } lift, { $cope } cope
note-nothing-to-lay = the cope is heavy enough; a clamp if it is moved; { $lift } lift, { $cope } cope
note-opening = { $alone } left alone, { $handled } until it is handled
note-or = or { $pipe }
nothing = nothing

drawing-caption = { $count ->
    [one] The pattern lies
   *[other] { $count } patterns lie
} in the flask as drawn; sprue, runner and feeder are yours to place.
drawing-rigged = { $count ->
    [one] The pattern lies
   *[other] { $count } patterns lie
} as drawn; the rigging is placed by rule, { drawing-moved }. S sprue, R runner, G gate, F feeder, C core; broken lines lie behind the cut.
drawing-moved = [mould.place] in job.toml moves any of it
    .sheet = drag its gates and feeders on the plan to move them
letter-sprue = S
letter-runner = R
letter-gate = G
letter-feeder = F
letter-core = C
drawing-wanders = Where the joint leaves its level the sand of the drag is hatched; contour lines in the plan stand { $every } apart.
drawing-scale = Scale { $scale }; lengths in mm.
drawing-plan = Plan
drawing-section = Section
drawing-cope = cope { $mm }
drawing-drag = drag { $mm }
drawing-pour = pour { $mm }

## The pour card

card-title = Pour card
card-stop-word = Stop word
card-stop-default = STOP
card-stop-told = everybody stands still; the pourer sets the metal down or finishes into the ingot mould.
card-dry = Dry and warm, ticked by name before this card was printed
card-crew = Crew
card-path = Path, walked once with an empty crucible
card-order = Order: what wants the hottest metal first
card-mould = mould
card-on-the-cope = on the cope
card-metal-by-then = metal by then
card-not-below = not below
card-takes = takes
card-fill-in = fill in
card-loses = The metal is reckoned to lose { $drop } from one mould to the next: measure it. Colder than "not below", a mould waits for the next heat.
card-next-heat = Next heat: { $moulds }.
card-aloud = Said aloud before the furnace is opened
card-foot = Figures from tables and hand sums; local codes and licensed practice come first. Clean and dry again after every pour.

rule-clothes = Leather boots with the trousers over them, face shield, leather apron, no synthetics.
rule-onlookers = Onlookers stay 2 m away and behind the pourer. Nobody crosses the path.
rule-steady = Pour steadily with the basin full. A mould once begun is filled, or given up for good.
rule-rest = What is left, and metal that has grown too cold, goes into the hot ingot moulds at once.
rule-floor = Metal on the floor: dry sand over it, never water. Step back, do not run.
rule-burn = A burn: cool water on the skin for 20 min, away from the metal, and call for help.

dry-floor = Floor: dry sand under path and mould, no bare concrete, no puddle
dry-ladle = Ladle and lip: heated red, not only dry to the eye
dry-tongs = Tongs and shank: warm, no rust scale, no damp wrapping
dry-skimmer = Skimmer, plunger, stirrer: hot before they touch metal
dry-ingot-moulds = Ingot moulds: heated and coated, ready for what is left
dry-crucible = Crucible: warmed through, no crack, no damp store
dry-charge = Charge: dry, warm, no closed tube, nothing added wet later
dry-flux = Flux and additions: from a dry tin, warmed
dry-mould = Mould: at temper or dried, vents open, not stood in rain
dry-cores = Cores: baked or gassed, stored dry, vent to air; or there are none

## Cut templates

cut-title = Cut templates
cut-told = Full size, as the metal stands. Print at 100 %, without fitting to the page, and check both bars at the foot before you cut. Areas are what counts: a channel of another shape with the same area runs as well.
cut-larger = Larger than the paper, draw with rule and compass: { $pieces }.
cut-picture = Templates in full size with their sizes.
cut-sprue-peg = sprue peg, from the side
cut-sprue-foot = sprue foot
cut-sprue-top = sprue top
cut-runner = runner, across
cut-gates = { $count ->
    [one] gate, across
   *[other] each of { $count } gates, across
}
cut-feeder = feeder
cut-peg-sizes = Ø { $thick } to Ø { $thin }, long { $long }
cut-round-sizes = Ø { $across }
cut-channel-sizes = { $wide } wide, { $high } high
joint-title = The joint of the mould
joint-told = Cut the sand of the drag to this line and these heights before the cope is rammed. Heights in mm above (+) or below (−) the edge of the flask; places in mm from its front left inside corner.
joint-picture = The line of the joint from above with contour lines, the same line laid out straight, and a table of heights.
joint-from-above = Around the first casting, from above.
joint-straight = The lines that leave the level, laid out straight from their lowest number.
joint-table = place: along the flask, across it, height
row-solved = Solid, by its heat
note-solved = cold enough to open after { $open }
