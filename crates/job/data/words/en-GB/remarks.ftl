# What the founder is told beside the figures, and what to do about it.
#
# The id of a remark is its code, which stands in plan.json; after a hyphen it says which of several
# wordings of the code it is. Each has an .advice that can be followed in a shop.

## The mesh

open_boundary = { $edges } open edge(s) in { $loops } opening(s): the skin has holes
    .advice = close the skin at that place in your drawing program and export a solid
missing_face = faces of the skin were missing ({ $area }) and have been closed flat; the volume is { $least } to { $most } by the lid
    .advice = check that the part is solid there; a hollow part drawn without thickness is taken as solid: give it a wall
winding = facets turned against their neighbours along { $edges } edge(s)
    .advice = export the part again as one solid
inverted = { $shells } shell(s) wound inside out
    .advice = export the part again as one solid
non_manifold = { $edges } edge(s) where more than two facets meet
    .advice = join or part the bodies that meet in that edge
self_intersection = { $facets } facet(s) pass through others; { $miscounted } of the metal counted twice or inside out
    .advice = unite the bodies in your drawing program, then export again
duplicate_facets = { $facets } facet(s) there twice
    .advice = export the part again
degenerate_facets = { $facets } facet(s) without area
    .advice = export the part again
multi_body = { $count } separate bodies
    .advice = each is cast as it lies; take one body a file if they are different parts
multi_body-within = { $count } separate bodies, { $within } of them inside the metal of another
    .advice = unite the bodies, or export the one that is meant
enclosed_void = { $count } void(s) closed in by metal, { $volume } together
    .advice = no core could be carried in it or shaken out: open it to the outside, or fill it
no_volume = no volume that could be poured
    .advice = give the part a wall, and export it as a solid
unit_suspect = the file says { $unit }, which makes the longest side { $size }
    .advice = check that size against the drawing before anything is made
unit_suspect-none = the file gives no unit and its longest side is { $size }
    .advice = choose (part.unit in the job, or --unit): { $offers }; a hand is some 190 mm long, a pencil 175 mm
    .sheet = choose its unit: { $offers }; a hand is some 190 mm long, a pencil 175 mm
unit_judged = the file gives no unit; taken as millimetres: { $mm } ({ $inches })
    .advice = if that is wrong, say its unit: part.unit in the job, or --unit
    .sheet = if that is wrong, put another under “{ key-unit }”
mended = mended: { $done }
    .advice = the file itself is left as it was

## The part

solids_apart = the solids make { $bodies } separate bodies
    .advice = those that belong together have to touch: let one reach a millimetre into the next
solid_adds_nothing = solid { $number } lies wholly in what stands before it
    .advice = check its place and its sizes; it adds no metal
solid_takes_nothing = solid { $number } takes away where nothing stands
    .advice = check its place; it acts only on the solids listed before it
volume_guessed = without a weight the metal is a guess: { $low } to { $high }
    .advice = weigh the pattern, best in water, and write [part.displaced]; melt for the high end until then
    .sheet = weigh the pattern in air and in water and write both into the job's file, job.toml, under [part.displaced]; the sheet follows as soon as it is saved; melt for the high end until then
volume_by_weight = by weight alone the metal may be off by { $off }
    .advice = weighing in water would narrow it to some two per cent: write [part.displaced]
    .sheet = weighing in water too would narrow it to some two per cent: write both weights into the job's file, job.toml, under [part.displaced]; the sheet follows as soon as it is saved
sizes_only = walls, shadow and moduli rest on five sizes, not on a shape
    .advice = their bands are wide: go by the side of them that is safe, and write mould.joint
    .sheet = their bands are wide: go by the side of them that is safe, and fill in “{ key-joint }”
sizes_only-joint = walls, shadow and moduli rest on five sizes, not on a shape; the joint is taken half way up
    .advice = their bands are wide: go by the side of them that is safe, and write mould.joint
    .sheet = their bands are wide: go by the side of them that is safe, and fill in “{ key-joint }”
prove_it-pressure = the part holds pressure: no figure here says that it is safe
    .advice = { proved-by-test }
prove_it-lifting = the part lifts or holds people: no figure here says that it is safe
    .advice = { proved-by-test }
prove_it-brake = the part is part of a brake: no figure here says that it is safe
    .advice = { proved-by-test }
prove_it-food = the part touches food: no figure here says that it is safe
    .advice = { proved-by-test }
prove_it-load = the part carries a load: no figure here says that it is safe
    .advice = { proved-by-test }

## The pattern

enclosed_void-plan = { $count } void(s) sealed inside the part cannot be moulded
    .advice = no core can be carried in or shaken out: open them to the outside or fill them
thin_wall = walls of about { $wall }; this metal commonly wants { $least } in sand
    .advice = thicken the wall, gate close to it, or pour at the hot end
walls_unmeasured = walls on { $share } of the surface are too thin for the cells used here
    .advice = measure them by hand; they are left out of the sections
contraction_disputed = { $sources } sources put the contraction at { $low } to { $high }
    .advice = measure your next casting and write metal.contraction in the job
    .sheet = measure your next casting and fill in “{ key-contraction }”
worn_original = moulded as it is, an original of { $longest } gives { $low } to { $high }: it has contracted once already
    .advice = build its faces up by contraction, wear and machining before it is moulded; old paint may hold lead: do not sand it dry
machined_faces = the stock for machining is not in the mesh as far as this plan knows
    .advice = add it to each machined face, more to those under the cope; better, turn the most important face down
rapping_not_counted = at { $longest } rapping does not make up for contraction
    .advice = make the pattern larger by the contraction in full; above some 75 mm rapping is too little beside it
no_draft = { $share } of the skin stands upright with the flattest way up: no draught to draw it by
    .advice = give those walls the draught that the plan asks for; where they grip sand they want most
print_lines = a pattern printed in layers of { $layer } holds the sand in its lines
    .advice = seal it, sand it along the draw and wax it before it is rammed up
cannot_draw = { $what }: as it is drawn it does not leave the sand
    .advice = step the joint down to it, make it a loose piece or a core, or bed the pattern in an oddside
not_looked_at = draft, undercuts, parting and core prints are not looked at here
    .advice = try the pattern in dry sand before it is rammed up

## Flask, sand and weights

flask_none = { $why }
    .advice = the plan goes on with a flask of that size, to be made
flask_tight = { $why }
    .advice = ram the narrow places with care, or take a larger flask
no_head = the pour stands { $pour } over the joint and the casting { $top }: it cannot fill
    .advice = build the basin up, take a deeper cope, or lay more of the part in the drag
sand_short = the mould wants { $wanted } of sand, the heap has { $there }
    .advice = mix more, or back the facing with dry old sand
heap_unknown = the heap is not in shop.toml, so sand is not compared with it
    .advice = weigh it once by the bucket and write [heap]
    .sheet = weigh it once by the bucket and fill in “{ key-heap-mass }” on the sheet of the sand
too_wet = the heap is at { $moisture } of wet mass; above { $limit } a mould turns to steam
    .advice = dry it back and weigh a handful again before ramming
moisture_unknown = the moisture of the heap is not known
    .advice = weigh a handful wet and dry; wet sand under metal throws it back at you
flask_heavy = half the flask weighs { $load }; three people may lift { $three } together
    .advice = use a hoist, ram it where it is poured, or take a smaller flask
weights_needed = the metal lifts the cope: { $lay } on it are not optional
    .advice = lay them on, or clamp for the same force, before the first drop
mould_stands = the mould stands { $stands } before it is poured; such sand keeps some { $keeps }
    .advice = close it and cover it; before the pour feel the skin: no drip, no crumbs, no dust
mould_stands-long = the mould stands { $stands } before it is poured; such sand keeps some { $keeps }
    .advice = cover it; before the pour feel the skin: where it crumbles, spray, rest and harden it; where it drips or feels wet, dry it or ram anew
irons_short = { $wanted } have to lie on the cope; your irons come to { $there }
    .advice = clamp cope and drag together for the same force, or borrow weights

## Feeding and filling

feeder_none-thin = no feeder: every section is thin enough to be fed by its gate
    .advice = if a boss sinks after all, feed that boss next time
feeder_none-iron = no feeder: iron of this carbon swells in a mould shown firm by: { $shown }
    .advice = holds only while every mould is as firm; a heavy hub may sink: feed or chill it
feeder_iron = a feeder is planned: no test shows the mould firm, or the carbon is unknown
    .advice = write mould.firm and metal.carbon_equivalent once you know them
    .sheet = once you know them, write into the job's file, job.toml, how the mould was shown firm (firm, under [mould]) and the carbon_equivalent (under [metal])
feeder_impossible = shrinkage is more than a plain feeder of any size can give
    .advice = use an insulating sleeve, several feeders, or chills; ask an experienced founder
feeder_high = the feeder is { $height } high and the cope { $cope }
    .advice = set a ring of sand on the cope, or take a deeper cope
hot_spot-meet = it freezes last where { $one } meets { $other }
    .advice = that is the place for the feeder or the chill, whatever looks thicker
hot_spot-in = it freezes last in { $one }
    .advice = that is the place for the feeder or the chill, whatever looks thicker
more_heavy_sections = { $count } more section(s) nearly as heavy as the one fed, this the next
    .advice = each freezes on its own: feed or chill it, or join them by a heavier wall
fills_too_late = the thinnest wall, some { $wall }, freezes in { $freezes }: no usual sprue fills it
    .advice = expect it short: thicken it, gate straight into it, or leave it to be machined
fill_must_hurry = the thinnest wall freezes sooner than the usual filling time
    .advice = the choke is sized for the shorter time: pour without a pause, at the hot end
gate_too_fast-widen = the fastest gate runs at { $speed }; above { $limit } the front breaks, folds its skin in and washes sand
    .advice = cut the gates to { $area } in all, wide and shallow, and feed from below
gate_too_fast-slow = the fastest gate runs at { $speed }; above { $limit } the front breaks, folds its skin in and washes sand
    .advice = lower the pour or slow the metal in a wider runner or a filter; gates alone do not tame it
gates_uneven = with gates of one size the last casting is full { $lag } after the first
    .advice = cut the gates { $cut } from the sprue outwards, or step the runner down

## Cores

core_seat_unknown = it is not said how core "{ $core }" sits; its whole float is counted
    .advice = write sits = hung, bridged, standing or chaplets; vent it through its print
core_pins = core "{ $core }" has no print and { $pins } pins: it can turn on them
    .advice = three pins at least, not all in one plane, and a vent to the open
core_loose = core "{ $core }" stands on its print and floats by { $lift } once metal creeps under it
    .advice = pin or chaplet it from above; vent it through the print, clear of the metal
core_oversize = the thick freezes long after the thin; a larger core "{ $core }" takes metal out where it goes through the thick
    .advice = make the core hole oversize where the drawing bears it, more so as the casting draws together by { $low } to { $high }
core_print = the print of core "{ $core }" presses with { $pressure } on sand that bears { $strength }
    .advice = enlarge the print until the sand is twice as strong, or ram it harder there

## The metal

crucible_none = none of your crucibles holds { $charge } at working fill
    .advice = a mould has to be poured in one go: cast fewer, or borrow a crucible
crucible_unknown = no crucible in shop.toml, so the charge is not compared with one
    .advice = write [[crucible]] with its mark or its volume to the brim
    .sheet = write its mark or its volume to the brim into the shop's file, shop.toml, under [[crucible]]; the sheet follows as soon as it is saved
loss_unknown = no figure for the melt loss of this metal in this kind of furnace; from the best to the worst of other furnaces is taken
    .advice = weigh what goes in and what comes out once, and write melt.loss
    .sheet = weigh what goes in and what comes out once, and fill in “{ key-loss }”
lead_food = this metal holds lead, or may: nothing that touches food is cast of it
    .advice = clean ingot of known make-up only; sorting scrap lowers the risk and does not remove it; ask your food authority
zinc_back = zinc goes up in smoke and is put back last: it may flare
    .advice = warm, dry, pushed under with tongs, at the lowest heat that runs; outdoors, upwind, with a fume respirator
pour_hot = iron into a wall of { $wall } is poured hot: { $low } to { $high }; colder it misruns and comes out white
    .advice = at the lip, within minutes of the inoculant; books say 1350 to 1450 °C for thin walls, one works pours all it casts at 1320 to 1440 °C
no_probe = no probe: the heat is told by a cue card of colour and skin, and by how long a spoonful takes to freeze
    .advice = oddside reckon spoon reads both; set the spoon once beside a borrowed probe; in doubt, pour a test bar first
scrap_was = { $was }: { $mind }
    .advice = before anything goes into the crucible; what cannot be cleaned stays out
wanted_equivalent = a wall of { $wall } wants a carbon equivalent of { $low } to { $high }, so that it can be filed
    .advice = state the mix of the scrap as a range; stove plate and radiators are rich in phosphorus
degas = degassing takes { $low } to { $high } of tablets at 730 to 760 °C, if it is done at all
    .advice = outdoors and upwind, plunged dry and warm, then 2 to 3 min of rest; two cups tell if it did

# These four say the same as the table of fume and poison, crates/metal/data/fumes.toml.
zinc_fume = zinc boils off as white fume and gives metal fume fever
    .advice = outdoors or under a hood, upwind, with a fume respirator; do not overheat
lead = holds lead: fume, dust and skimmings poison
    .advice = respirator, no eating or smoking near, wash before going home; never for food
magnesium_scrap = magnesium looks like aluminium; it burns, and water makes it worse
    .advice = test each piece of scrap; keep dry sand or a class D extinguisher at hand
unknown_scrap = scrap of unknown make-up may hold lead, cadmium or paint
    .advice = take only scrap that was cast before and whose source you know; never for food

takes_up_gas = takes up hydrogen when held long, hot or damp: pinholes
    .advice = melt fast, dry everything, pour as soon as it is ready
oxide_folds = a tough skin folds in wherever the stream breaks
    .advice = keep the basin full, fill from below, no splashing
spoiled_by_lead = traces of lead, tin or cadmium rot these castings over the years
    .advice = known ingot only, its own crucible and tools
spoiled_by_aluminium = a little aluminium or silicon from other scrap spoils it
    .advice = keep its returns and tools apart
spoiled_by_brass_returns = leaded returns make it crack
    .advice = no brass or gunmetal returns in this charge
chills_white = thin sections may come out white and hard
    .advice = pour a chill wedge first; inoculate and pour within minutes
tears_hot = tears in the mould where it is held back
    .advice = round the corners, ram cores soft, open early enough
fine_sponge = fine sponge in heavy sections whatever the feeder
    .advice = put faces to be machined down, and chill them

## The charge

charge_galvanised = { $heap }: coated with zinc: white fume as it melts, and fever after it
    .advice = leave it out; if it has to go in, outdoors, upwind, with a fume respirator
charge_leaded = { $heap }: holds lead: its fume, dust and skimmings poison
    .advice = respirator, no eating or smoking near, wash before going home; never for food
charge_painted = { $heap }: paint and coatings burn to poisonous smoke; old paint holds lead
    .advice = strip it first, not by fire; outdoors, upwind, with a fume respirator
charge_oily = { $heap }: oil flares up, smokes and gases the melt
    .advice = wash and dry it; never drop oily metal into a melt
charge_plated = { $heap }: plating may be chromium, nickel or cadmium: poisonous fume
    .advice = leave it out unless you know what the plating is
charge_damp = { $heap }: damp or hollow pieces blow the melt out of the crucible
    .advice = open every hollow, dry it hot, and charge it only into a cold crucible
charge_unstated = { $heap }: nothing said of { $elements }; taken as none
    .advice = write a range, such as "below 0.15 %": the chance counts what is written
charge_no_price = no price for { $heaps }: counted as costing nothing
    .advice = write what it would fetch or what its like costs, else it goes in first
charge_scale = rounded to the scale, { $elements } leaves the target
    .advice = weigh on a finer scale (scale_step), or make up a larger charge
charge_unsure = the heaps are not known well enough for this target
    .advice = sort them, have one piece of each analysed, or take more of the purer metal
charge_try = a make-up is a sum over guesses until the melt is tried
    .advice = pour a wedge or a test bar and look at the break before the mould is poured
charge_not_made = no charge from your heaps: { $why }
    .advice = add what is named, or widen the limits under [charge]
    .sheet = add what is named to the heaps in the shop's file, shop.toml, or widen the limits in the job's file, job.toml, under [charge]

## Opening

hot_mould = opened before { $open } it may be liquid or red inside
    .advice = count from the last of the pour; tongs, gloves, boots; never water on it
hot_mould-oil = opened before { $open } it may be liquid or red inside, and oil in hot sand flares
    .advice = count from the last of the pour; tongs, gloves, boots; never water on it
open_late = thick and thin hang together: what cools first pulls, and cracks or is cracked
    .advice = leave it { $open } in its sand; bow straight bars between thick and thin, make them odd in number and slender; none of these alone cures it
never_cold = so much metal in so little sand is not cold in a fortnight
    .advice = take a larger flask, or have an experienced founder lay it open
solved_longer = by the heat in the mould the castings take { $solved } to freeze, and not { $pencil } as by the law of moduli
    .advice = go by the longer: leave the mould alone until then
solved_sooner = by the heat in the mould the castings are solid after { $solved }, and not { $pencil } as by the law of moduli
    .advice = the law counts the heaviest section alone; the plan stays on the late side
solved_open = by the heat in the mould the castings are cold enough after { $solved }, and not { $plan } as the plan says
    .advice = open by the later
solved_cut_off = places in the castings that are cut off from every feeder while they freeze: { $count }; they lack { $lacks } of metal
    .advice = see where by oddside freeze: feed, chill or thicken the way
    .sheet = see where by the section through the freezing below: feed, chill or thicken the way
solved_stale = what is kept of a freezing belongs to another plan or mesh, and is not used
    .advice = run oddside freeze with --force again
    .sheet = follow the freezing once more, below
