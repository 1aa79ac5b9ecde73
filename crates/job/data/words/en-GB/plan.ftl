# The plan: names of figures, of what is chosen and of metals, in the order of the day.
#
# The English name of a figure is also its key in plan.json and for `oddside why`: it is changed in
# no language without the other.

# What a founder typed, and messages one after the other.
typed = { $words }
list = { $each }

## Figures

figure-part-volume = part volume
figure-casting-mass = casting mass
figure-contraction = contraction
figure-pattern-length = pattern length
figure-pattern-length-rapped = pattern length, rapped
figure-tolerance-on-the-longest-size = tolerance on the longest size
figure-machining-stock-below-or-at-the-side = machining stock below or at the side
figure-machining-stock-under-the-cope = machining stock under the cope
figure-draught-on-the-deepest-wall = draught on the deepest wall
figure-casting-from-the-original-as-it-is = casting from the original as it is
figure-laid-on-each-end-of-the-original = laid on each end of the original
figure-master-length = master length
figure-modulus-of-the-heaviest-section = modulus of the heaviest section
figure-modulus-of-the-thinnest-section = modulus of the thinnest section
figure-pouring-temperature = pouring temperature
figure-freezing-time-of-the-heaviest-section = freezing time of the heaviest section
figure-shrinkage-to-be-fed = shrinkage to be fed
figure-feeder-diameter = feeder diameter
figure-feeder-diameter-by-modulus = feeder diameter by modulus
figure-feeder-diameter-by-volume = feeder diameter by volume
figure-neck-across = neck across
figure-fill-time = fill time
figure-effective-head = effective head
figure-choke-area = choke area
figure-sprue-foot-diameter = sprue foot diameter
figure-sprue-top-diameter = sprue top diameter
figure-runner-area = runner area
figure-gate-area = gate area
figure-gate-speed = gate speed
figure-last-casting-full-after-the-first = last casting full after the first
figure-poured-each-second = poured each second
figure-slag-trap-volume = slag trap volume
figure-run-off-past-the-last-gate = run-off past the last gate
figure-metal-in-the-running-system = metal in the running system
figure-poured-mass = poured mass
figure-charge = charge
figure-melt-loss = melt loss
figure-tongs-load = tongs load
figure-lift-out-temperature = lift-out temperature
figure-fuel = fuel
figure-inoculant = inoculant
figure-wanted-carbon-equivalent = wanted carbon equivalent
figure-phosphor-copper = phosphor copper
figure-zinc-to-put-back = zinc to put back
figure-sand-to-fill-the-flask = sand to fill the flask
figure-sand-to-have-ready = sand to have ready
figure-cope-lift = cope lift
figure-cope-mass = cope mass
figure-weight-on-the-cope = weight on the cope
figure-force-on-each-of-four-clamps = force on each of four clamps
figure-core-float = core float
figure-core-float-core-weightless = core float, core weightless
figure-core-print-pressure = core print pressure
figure-heavier-half-of-the-flask = heavier half of the flask
figure-leave-alone-until = leave alone until
figure-may-be-opened = may be opened
figure-may-be-handled = may be handled

## What is chosen

choice-flask = flask
choice-sprue-drill = sprue drill
choice-sprue-pipe = sprue pipe
choice-feeder = feeder
choice-charge-from-heaps = charge from heaps
choice-crucible = crucible
choice-irons = irons
choice-lifted-by = lifted by
choice-ram-to-a-dent-of = ram to a dent of
choice-vents = vents

## What is chosen, and why

chosen-flask = { $flask }: { $inside }, cope { $cope }, drag { $drag }
flask-to-be-made = to be made
reason-flask-wall = at least { $wall } of sand round the pattern
reason-flask-asked = asked for by name; less sand than is wanted
reason-flask-no-list = no flask is listed in shop.toml
reason-flask-none = none of your own takes the pattern
cutter-drill = { $size } drill
cutter-copper-tube = { $size } copper tube
cutter-steel-pipe = { $size } steel pipe ({ $outside } outside)
reason-cutter = { $off } of the area wanted
chosen-feeder-none = none needed
chosen-feeder-each = one on each casting, on its heaviest section
reason-feeder-thin = every section is thin enough to be fed by its gate
reason-feeder-firm = iron of this carbon swells; mould shown firm by: { $shown }
reason-feeder-volume = set by the volume: it must not run empty; as high as wide
reason-feeder-freezing = set by the freezing: it must freeze last; as high as wide
chosen-crucible-none = none of your own
reason-crucible = holds { $mass } at { $fill } of its brim
reason-crucible-none = the charge is more than any holds
chosen-irons-none = none: the cope is heavy enough
chosen-irons-short = not enough of your own
reason-irons-none = at the high end of the lift
reason-irons-together = { $mass } together
reason-irons-clamp = clamp for the same force
chosen-one-person = one person
chosen-two-people = two people
chosen-three-people = three people
chosen-nobody = nobody by hand
reason-lifting = guideline at the bench: { $one } for one, { $two } for two; local codes rule
chosen-dent = { $aim } (no wider than { $soft }, no less than { $hard })
reason-dent = ball of { $ball } from { $height }; your { $metal } on a good day was { $dent }
chosen-vents = { $number } by a 2 mm wire, even over the castings, 12 mm short of them
chosen-vents-none = none needed: the sand is open enough
chosen-vents-too-few = no number of wire vents is enough
chosen-vents-habit = by a 2 mm wire, every 30 mm, 12 mm short of the pattern
reason-vents-gas = pencil grade; gas of this sand against the head of the metal
reason-vents-open = dry or open the sand, or leave open feeders on the top
reason-vents-habit = habit: the heap's permeability and moisture are not both known

## What sets the filling time

fill-because = not under the low end: { $low }; not over the high end: { $high }
fill-quick-rule = faster washes sand (rule for thin walls)
fill-slow-rule = slower lets the metal skin over (rule for heavy walls)
fill-thin-wall = the thinnest wall would freeze before it is full

## Metals

alloy-al-99-5 = Al 99.5
alloy-al-si12 = Al-Si12
alloy-al-si6-cu4 = Al-Si6-Cu4
alloy-al-si7-mg = Al-Si7-Mg
alloy-al-wrought-scrap = Al wrought scrap
alloy-aluminium-bronze = Aluminium bronze
alloy-grey-iron = Grey iron
alloy-gunmetal-85-5-5-5 = Gunmetal 85-5-5-5
alloy-pewter-92-7-5-0-5 = Pewter 92-7.5-0.5
alloy-silicon-brass = Silicon brass
alloy-silicon-bronze = Silicon bronze
alloy-tin-bronze-88-10-2 = Tin bronze 88-10-2
alloy-yellow-brass = Yellow brass
alloy-za-12 = ZA-12
alloy-za-27 = ZA-27
alloy-za-8 = ZA-8
alloy-zamak-3 = Zamak 3
