# The sand bench: cards, drying, mixes, tests, and the book of a heap.

## What stands on top

bench-card-head = { $name }: the card of this sand
bench-water-head = water in the sand
bench-dry-head = drying to a weight
bench-stand-head = a rammed mould standing open
bench-pucks-head = { $name }, by { $count } pucks
bench-mixes-head = mixes: oddside sand recipe NAME weighs one out
bench-recipe-head = { $mix }
bench-tests-head = tests: oddside sand test NAME key=figure works one out
bench-test-head = test: { $test }
bench-watch-head = { $test }, { $count } readings
bench-pour-head = { $name }, pour of { $day }
bench-state-head = { $name } after { $count } pours
bench-rescue-head = bringing the heap back

## Figures

bench-fineness = grain fineness
bench-mean-grain = half of the grains are finer than
bench-openness = permeability if it were clean and dry, about
bench-uniformity = evenness d60/d10
bench-sieves-with-a-tenth = sieves that hold a tenth or more
bench-dust = dust below 75 µm
bench-suits = suits
bench-suits-coarse = heavy castings, iron; rough on small aluminium
bench-suits-non-ferrous = aluminium, brass and bronze
bench-suits-fine = facing and fine work; it breathes little
bench-moisture-of-wet = moisture, of the wet mass
bench-moisture-of-dry = moisture, of the dry sand
bench-moisture-off-by = off by, either way
bench-jar = fine layer in the jar, by volume
bench-washable = washable fines, by mass
bench-burning-loss = burning loss
bench-density = rammed density
bench-voids = air between the grains
bench-shape = grain shape
bench-shape-rounded = rounded: flows and breathes well, wants less clay
bench-shape-sub-angular = sub-angular: a good middle
bench-shape-angular = angular: locks well, wants more clay and ramming
bench-shape-compound = compound: breaks down into dust in use
bench-water-to-add = water to add
bench-water-each-spray = each of three sprays
bench-stop-weight = stop drying at
bench-water-to-lose = water to lose
bench-drying-rate = drying rate, kg/h m²
bench-surface = the wet surface stands at
bench-drying-time = drying time
bench-drying-own = drying time by your own log
bench-drying-book = the book's time above is the one to write into the log: planned_drying=
bench-time-left = time left
bench-done-at = done at about
bench-stands = stands for at least
bench-taken-up = water taken up, of the dry mass
bench-by = by
bench-by-line = the line between pucks
bench-by-curve = the sorption curve through the pucks
bench-air-up-to = air up to
bench-mix = mix
bench-part = part
bench-sand = sand as it lies
bench-water-brought = water that sand and binder bring
bench-mix-in-all = the mix in all
bench-cost = cost of what was priced
bench-test = test
bench-reading = reading
bench-verdict = verdict
bench-squeeze-dry = too dry, or the clay is dead
bench-squeeze-right = right
bench-squeeze-wet = too wet
bench-good-days = your good days
bench-test-noise = one test alone is off by (standard deviation)
bench-limits = limits of a reading
bench-step-limits = limits of a step
bench-chart-readings = { $test }: readings
bench-chart-means = { $test }: weighted means
bench-crust = burnt crust
bench-clay-burnt = heap hotter than its clay bears
bench-organic-share = heap hotter than sugar and oil bear
bench-clay-killed = clay killed
bench-organic-burnt = binder burnt
bench-steam = water gone as steam
bench-thrown-out = thrown out
bench-top-up = clay that brings it back to its start
bench-pours-left = such pours left
bench-holds-sand = sand
bench-holds-live-clay = live clay
bench-holds-dead-clay = dead clay
bench-holds-organic = organic binder
bench-holds-ash = ash
bench-holds-core-sand = core sand
bench-holds-parting = parting dust
bench-holds-fines = silt and broken grains
bench-holds-water = water
bench-of-dry = { $share } % of the dry heap
bench-dead-share = dead matter
bench-dilution = dry sand and clay that would do instead
bench-out-and-in = old sand out, new sand in
bench-clay-to-add = new clay to add
bench-fines-after = washable fines then

## What to mind

bench-silica = dry sand dust is silica, it scars the lungs: damp it or wear a mask for fine dust (P100, FFP3), outdoors; never sweep it dry
bench-by-freezing = the heat in the sand is that which was followed in the mould of { $job }, until it is opened
bench-short-stack = sieves left out of the stack leave the fineness open: it lies in the band
bench-one-size = grains of nearly one size: they part and buckle under heat; three or four sieves with a tenth each are wished for
bench-wash-dust = much dust: wash the sand in four or five changes of water
bench-jar-volume = the layer is by volume and holds much water: it is no per cent of clay by mass; wash and dry a sample for that
bench-washable-all = what washes out is live clay, dead clay and silt together
bench-natural-temper = natural sands mould best at 8 to 9 % of water, far above bentonite sand: do not correct one to the figure of the other
bench-clay-loses = clay itself loses { $low } to { $high } % of its mass in the fire: take that off before you blame the binder
bench-larger-handful = this scale tells too little on such a handful: dry { $mass } or more, or use a finer scale
bench-three-sprays = add it in three sprays, mull ten minutes, rest an hour, squeeze; keep back the last third, water is not taken out again
bench-give-weather = give air and humidity, and area or layer, for the time it takes
bench-weigh-to-narrow = before anything is weighed the time is good to a third: give weighed and after from the next weighing
bench-weigh-at = weigh again at { $time }: I expect { $mass }
bench-weigh-in = weigh again in { $minutes } min: I expect { $mass }
bench-dry-enough = it is dry enough, or past it: take it in now
bench-stand-least = water that comes up from below is left out: it stands at least so long; cover it to gain time
bench-cover-damp = a covered or closed mould sweats: look at its face before you pour, and do not pour a damp one
bench-do-not-pour = do not pour a mould or core of organic binder that has stood at { $at }: dry or bake it again first
bench-never-so-dry = even the driest air of these pucks leaves more in it than that
bench-within-sources = { $part }: { $here } of dry sand; sources here take { $low } to { $high }
bench-outside-sources = { $part }: { $here } of dry sand lies outside every source here, which take { $low } to { $high }: make a small batch of each before the heap
bench-part-left-out = { $part } is left out: parts.{ $part }=… takes it in, in parts on 100 of dry sand; sources here take { $low } to { $high }
bench-test-batch = mix one kilogram first and do the squeeze, the drop and the bottle on it
bench-no-good-days = no good day of this test is in the book yet: enter one with --day DAY --good when the sand moulds well
bench-below-good-days = below every one of your { $count } good days
bench-above-good-days = above every one of your { $count } good days
bench-like-good-days = as on your { $count } good days
bench-repeat-once = test one batch twice now and then: without repeats nobody knows how far one test may be off
bench-test-coarse = this test differs from itself nearly as much as the batches do: take the mean of three
bench-few-readings = { $count } readings are few: limits from less than twenty may be a third off
bench-in-hand = nothing speaks of a change
bench-signal-beyond = { $day }: one reading beyond three deviations
bench-signal-two-of-three = { $day }: two of three beyond two deviations on one side
bench-signal-four-of-five = { $day }: four of five beyond one deviation on one side
bench-signal-eight = { $day }: eight in a row on one side of the middle
bench-signal-six = { $day }: six in a row that rise, or that fall
bench-mean-beyond = { $day }: the weighted mean has left its limits, a small change that lasts
bench-step-beyond = { $day }: a step larger than chance makes
bench-passed-live-clay = too little live clay: add the clay told above before the next pour, and test
bench-passed-dead = too much dead matter: throw part of the heap out for new sand before the next pour
bench-passed-organic = too much unburnt binder: it gives gas; mix new sand in before the next pour
bench-soon-live-clay = in { $count } such pours there is too little live clay: top up sooner
bench-soon-dead = in { $count } such pours there is too much dead matter: throw the crust out, and part of the heap
bench-soon-organic = in { $count } such pours there is too much unburnt binder: add less of it
bench-lasts = no bound is passed within { $count } such pours
bench-do-not-dilute = not sensible: so much dry stuff makes another heap; spread it out and let the water go
bench-dead-clay = many fines and a squeeze that crumbles are dead clay, not clay enough
bench-gassy = such a burning loss makes gas: burn no more binder into it
bench-short-sand = { $mass } of new sand is lacking for that
bench-short-clay = { $mass } of new clay is lacking for that
bench-wash-first = wash a sample first: without its fines nobody knows how tired it is
bench-silicate-out = core sand bound with silicate spoils clay: sieve the lumps out and keep them out of the heap
bench-dull-pour = test again before you pour, and let the first pour be a dull one, with nothing to lose
bench-step-dry = spread it out and dry it to the stop weight
bench-step-sieve = sieve out core lumps and metal
bench-step-crust = throw out burnt crust first, then the part to be exchanged
bench-step-add = add new sand, strew the clay over it damp
bench-step-mull = mull ten minutes and more, rest overnight
bench-step-test = squeeze, drop and bottle; write them into the book

## How tests are done

bench-how-sample = take sand from three places, mix it, halve it until it is a test
bench-how-squeeze = squeeze a handful, open the hand, break it: felt=crumbles, sharp (finger lines, clean break) or smears
bench-how-drop = squeeze a lump, drop it from higher and higher until it breaks: height='60 cm'
bench-how-dent = drop a ball on the rammed face, mean of five dents: mass= ball= drop= dent=
bench-how-bottle = let a bottle drain air through a rammed plug at 10 cm of water: air= height= pressure='10 cmH2O' diameter= time=
bench-how-cylinder = ram a tube three blows, push it out, press it on a scale with a flat plate: load= diameter=
bench-how-bar = bake a bar, lay it on two edges, press its middle on a scale: load= span= breadth= height=
bench-how-disc = press a disc on its rim until it splits: load= diameter= height=
bench-how-compactability = riddle a tube of 120 mm full, strike off, three blows: rammed='70 mm'
bench-how-moisture = weigh a handful, dry it at 105 °C until it stays, weigh it: wet= dry=

## Mulling, facing, and a sheet on paper

bench-mull-head = mulling: clay worked in under pressure
bench-facing-head = facing sand
bench-sand-of-wet = moisture of the sand as it lies, of its wet mass
bench-mix-of-wet = moisture of the finished mix, of the wet mass
bench-mix-of-dry = the same, of the dry mix
bench-mull-by-hand = shovel and boots, on a floor
bench-mull-by-mixer = drill with a paddle, or a drum mixer
bench-mull-by-muller = muller: wheels or paddles that press
bench-facing-thick = thickness of the face
bench-facing-volume = facing sand as it lies, rammed
bench-facing-laid = the same by mass
bench-facing-ready = facing sand to have ready
bench-facing-open = the face breathes, of what the heap does
bench-facing-both = face and heap sand together, of what the heap does
bench-mull-minutes = mulling, common practice: { $hand } by shovel and boots, { $mixer } by a drill or drum, { $muller } by a muller
bench-mull-on = mull on: ten minutes gave { $gain }, more than the { $sure } by which two tests differ anyway
bench-mull-enough = enough: ten minutes gave { $gain }, within the { $sure } by which two tests differ anyway
bench-mull-common-practice = minutes are common practice for up to some 30 kg, no source: your own test says when to stop
bench-mull-hands = never reach into a machine that turns, nor take sand from it with a shovel: stop it and pull the plug
bench-mull-step-dry = sand and dry clay first, the sand damp: two minutes, until no grey lump is left
bench-mull-step-water = then the water in three goes, by spray, each worked in before the next; syrup goes in with the first
bench-mull-step-press = press and smear, do not only stir: tread and turn, lean on the shovel, or let the wheels run
bench-mull-step-test = test it, mull ten minutes, test again: oddside sand mull before= after= test=
bench-mull-step-rest = rest it covered, an hour at least, better overnight; riddle it before use
bench-facing-step-riddle = riddle it damp, never dry, onto the pattern until that is covered all over
bench-facing-step-press = press it home with the fingers to the thickness above, thicker in no corner
bench-facing-step-back = throw heap sand in behind it at once and ram, before the face dries
bench-facing-step-vent = vent through heap and face with a wire, stopping short of the pattern
bench-facing-finish = no published law ties roughness to the grain: one or two sieves finer than the heap is common practice
bench-facing-grain = give heap_grain= and facing_grain= from their cards to see what the face costs in breath
bench-facing-closes = grain by grain, clean and rammed alike, the mould is left { $left } of its breath: keep the face thin, and vent
bench-paper-amount = how much
bench-paper-made = weighed
bench-paper-mind = Mind
bench-paper-steps = In this order
bench-paper-notes = Good to know
bench-paper-blank-date = Date, who
bench-paper-blank-start = Started, stopped
bench-paper-blank-squeeze = Squeeze
bench-paper-blank-drop = Drop, height
bench-paper-blank-bottle = Bottle, seconds
bench-paper-blank-seen = What was seen

## How well a test repeats

bench-test-difference = two tests of the same sand differ by more than once in twenty
bench-test-share = the test, of all that varies in your book
bench-test-people = hands differ by (standard deviation)
bench-test-kinds = kinds of sand that the test tells apart
bench-people-studied = { $people } people tested the same batches: test and hands together are { $share } % of all that varies; below 10 is good, to 30 bearable
bench-people-uneven = several people tested: let each test the same two batches or more, twice each on the same day, and this tells what hands do

## Pictures

bench-sizes-title = { $name }: sizes of the grains
bench-sizes-caption = openings in mm, by factors; above the numbers of the sieves
bench-sizes-sieve = sieve
bench-sizes-kept = kept on each sieve
bench-sizes-finer = finer
bench-sizes-pan = pan
bench-chart-caption = dashed: limits; a hollow square with its day speaks of a change

## Read off at the heap

bench-felt-crumbles = it crumbles
bench-felt-sharp = sharp finger lines, clean break
bench-felt-smears = it smears
bench-key-fall = height of the fall
bench-key-ball-mass = mass of the ball
bench-key-ball = ball across
bench-key-dent = dent across
bench-key-air = air drained
bench-key-plug = height of the plug
bench-key-pressure = pressure
bench-key-diameter = diameter
bench-key-time = time
bench-key-load = load as it gave way
bench-key-span = between the edges
bench-key-breadth = breadth
bench-key-upright = height
bench-key-rammed = height rammed
bench-key-wet = wet
bench-key-dry = dry
