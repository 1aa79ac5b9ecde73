# What the terminal shows: plan, look, charge, card.

likely = likely
head-between = between
head-or = or
told-stop = STOP
told-caution = caution
told-note = note
at-place = at { $place }
written-to = written to { $folder }: { $files }
written = written: { $file }
stop-told = STOP: not to be poured as it stands; see the remarks
no-shop-file = no shop.toml found: flasks, crucibles and irons are those of the starter file; `oddside new DIR` writes one to fill in
unsettled = no plan: the mesh has to be settled first

plan-head = { $count ->
    [one] { $job }, in { $alloy }
   *[other] { $job }, { $count } castings in { $alloy }
}

## A look at a mesh

look-accepted = accepted
look-healed = healed
look-ask = ask
look-refused = refused
look-size = size
look-volume = volume
look-volume-told = { $volume }, surface { $surface }, centre of mass { $centre }
look-facets = facets
look-facets-told = { $facets }, bodies { $bodies }, voids { $voids }
look-cast-in = cast in
look-weighs = weighs

## The mould as solids

mould-volume = volume
mould-mass = weighs
mould-fills = metal, sand and cores fill the flask to within { $off }
mould-joint-flat = the joint is flat
mould-joint-wanders = the joint wanders: from { $below } below to { $above } above the edge of the flask, steepest { $slope } at { $place }
mould-off = the parts of the mould miss the inside of the flask by { $off }: sand is counted twice or not at all
piece-casting = casting { $number }
piece-basin = basin
piece-sprue = sprue
piece-well = well
piece-runner = runner { $number }
piece-gate = gate { $number }
piece-feeder = feeder { $number }
piece-vents = vents
piece-core = core "{ $name }"
piece-cavity = all metal in the flask
piece-cope = sand of the cope
piece-drag = sand of the drag
side-wall = at the wall of the flask
side-top = to the top of the cope
side-bottom = to the bottom of the drag
mould-thin-wall = { $piece }: { $sand } of sand { $side }, wanted { $wanted }; take a larger flask or move it
mould-thin-sand = { $piece } at { $place }: { $sand } of sand to { $other }, wanted { $wanted }; move one of them
mould-touch = { $piece } runs into { $other }, sharing { $shared }; move one of them under { $key }
mould-apart = { $piece } at { $place } does not meet { $other }; move it under { $key }
mould-hooks = { $piece } at { $place } hooks behind sand and tears it as it is drawn
mould-no-gate = { $piece } has no gate: the runner does not face it at the joint; say where under { $key }
mould-short-run-off = { $piece } ends { $missing } too soon after its last gate; deepen its end instead
mould-low-feeder = { $piece } stands { $missing } lower than it was sized; raise the cope above it
mould-flat-elsewhere = the part draws from a flat joint at another height: write { $joint } under [mould] for it
mould-long-print = { $piece } goes { $through } through the wall of the flask: write print_depth = "{ $write }" beside its print under [[core]], or take a larger flask
mould-no-print = { $piece } goes { $through } through the wall of the flask, which has no room for its print: take a larger flask
mould-core-not-drawn = core "{ $name }" is known by its volume only and is missing here: the metal is told as if it were not there
plan-solved = by the heat in the mould, a quick look on { $cells } cells: castings solid after { $likely } ({ $between }); castings cold enough to open after { $open }
plan-solved-kept = by the heat in the mould, as oddside freeze found it on { $cells } cells: castings solid after { $likely } ({ $between }); castings cold enough to open after { $open }
plan-solved-late = later than the plan opens
serve-open = the working sheet is open at { $address }
serve-stop = only this machine can reach it; Ctrl-C closes it
