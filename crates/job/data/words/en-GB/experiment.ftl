# Experiments on a heap: plans, results, pictures and batch cards.

## The plan

experiment-plan-head = { $name }: { $batches } batches of { $mass }, { $different } different mixes
experiment-basis-dry = amounts count each part dry, and all water as water; the grams are as each part lies
experiment-basis-lies = amounts and grams count each part as it lies
experiment-order = make them in this order, which was drawn by lot (seed { $seed })
experiment-mixes-made = each mix is made { $times } times: { $names }
experiment-mixes-days = every day holds each mix, so that what a day does is taken off
experiment-mixes-shows = two mixes are told apart if they differ by more than { $times } times the noise of a batch
experiment-second-session = from batch { $batch } on a second session, with { $names }: make it when the first is measured
experiment-repeats = repeats, which show the noise: { $list }
experiment-repeats-one = { $batch } of { $of }
experiment-repeats-none = nothing is repeated, so noise will not be told from difference: ask for two repeats at least
experiment-teaches-plane = they teach what each does by itself: { $names }
experiment-teaches-twisted = they teach what each does by itself and what each two do together: { $names }
experiment-teaches-bent = they teach what each does, what each two do together, and where the best lies in between: { $names }
experiment-spare = { $terms } numbers are learnt; { $spare } batches to spare show how sure they are
experiment-spare-none = no batch is to spare, so nothing will show how sure the results are: make more batches, or shape = "plane"
experiment-efficiency = they teach { $share } % of what the best plan of as many batches would, were none a repeat
experiment-shows = { $name } shows if it changes the result by more than { $times } times the noise of a batch
experiment-hidden = { $term } is not learnt: where it acts, it passes for { $terms }
experiment-unattainable = { $name } cannot come to { $bound } % because of the ranges of the others: { $reachable } % is as far as it goes
experiment-coarse = { $name } comes down to { $mass }, which your scale may miss by { $share } %: weigh it on a finer scale, or make larger batches
experiment-dust = dry sand and clay make dust that harms lungs for good: damp them, wear a mask, mix outdoors
experiment-batch = batch
experiment-day = day
experiment-mix = mix

## What the results say

experiment-read-head = { $name }: { $measured } of { $batches } batches measured
experiment-open = still to measure: batch { $list }
experiment-response = { $name }: { $count } batches, { $low } to { $high }
experiment-response-none = { $name }: no results yet
experiment-unread-none = enter them with: oddside experiment enter
experiment-unread-alike = all results are the same, so nothing is learnt from them: measure finer
experiment-unread-never = { $name } was { $value } in every batch measured, so nothing can be said about it: measure batches with another value
experiment-unread-few = { $batches } batches with { $different } different mixes cannot teach { $terms } numbers: measure more of them
experiment-unread-together = { $term } only moved together with the rest, so they cannot be told apart: measure batches in which they differ
experiment-noise-repeats = noise of one batch, by repeats: { $noise } ({ $low } to { $high }, 19 times in 20)
experiment-noise-unrepeated = no repeat is measured yet, so the noise is only known from what the shape leaves over
experiment-noise-left = the shape leaves { $noise } over, with { $spare } batches to spare
experiment-foretold = it takes up { $share } % of the differences, and would have foretold { $foretold } % of those of batches it was not shown
experiment-foretold-badly = it takes up { $share } % of the differences, and foretells a batch it was not shown no better than the mean does
experiment-lack-none = the shape misses no more than noise does (chance { $chance } %)
experiment-lack = the shape misses more than noise does (chance { $chance } %): results inside the range lie off it
experiment-lack-unjudged = whether the shape is right is not known: that takes repeats and mixes to spare
experiment-effect = { $name }, least to most tried: { $change } ± { $within }
experiment-effect-unsure = { $name }, least to most tried: { $change }
experiment-day-apart = day { $day } against the first: { $change } ± { $within }, taken off
experiment-odd = batch { $batch } gave { $measured } where the others foretell { $foretold }: look at it again, or make it again
experiment-winner = winner: { $mix }, { $value } ({ $low } to { $high })
experiment-as-good = { $share } % of the known range cannot be told from it
experiment-leading = in front: { $mix }, { $value }
experiment-unnamed-chance = no winner is named: chance alone parts mixes as much { $chance } times in 100, and 5 is the limit
experiment-unnamed-spare = no winner is named: no batch is to spare, so noise cannot be told from difference
experiment-unnamed-shape = no winner is named: the shape is wrong, so its top is not to be trusted; make the next batches
experiment-unnamed-step = no winner is named: the noise is smaller than the step of the instrument can show; read it finer
experiment-unnamed-range = a range is wanted, so no winner is named for it alone
experiment-unnamed-unknown = no winner is named: no mix is known well enough
experiment-mix-noise = noise of one batch: { $noise }, with { $spare } batches to spare
experiment-mix-mean = { $mix }: { $value } ± { $within }, { $count } batches
experiment-mix-lead = { $leading } against { $other }: { $by } ± { $within }
experiment-mix-winner = winner: { $mix }, { $value } ± { $within }
experiment-mix-unnamed = none named, because chance alone parts { $mix } as far from { $others } { $chance } times in 100, and 5 is the limit
experiment-mix-unmeasured = none named, because { $mix } has no result yet
experiment-mix-unrepeated = none named, because too few repeats are measured to tell noise from difference
experiment-mix-alike = none named, because every repeat gave the same reading: read the instrument finer, or write the size of its step
experiment-mix-days-hide = none named, because mixes and days changed together: measure one of the mixes on the other days too
experiment-mix-next-measure = measure the open batches first
experiment-mix-next-nothing = nothing more is needed to name the best
experiment-mix-next-again = make again: { $mixes }
experiment-mix-next-in-all = until each was made { $times } times in all; that shows the lead if it is as large as it looks
experiment-mix-next-small = the lead is so small that 50 batches of each would not show it: take the mix that costs less
experiment-mix-next-how = add them to the plan with: oddside experiment plan --more { $count }
experiment-joined = all wishes together
experiment-joined-mix = best for all: { $mix } ({ $share } % of all wishes met)
experiment-joined-none = no known mix meets all wishes at all: one of them comes out as worthless everywhere
experiment-joined-results = worthless and good of { $names } were taken from the results; write your own
experiment-wish = wish met
experiment-expected = expected
experiment-next = what to make next
experiment-next-better = most likely to be better: { $mix }; expected { $expected }, gain { $gain }
experiment-next-expected = { $name } { $value } ± { $deviation }
experiment-next-teaches = teaches most: { $mix }
experiment-next-few = which batch may be better is told from three measured batches on
experiment-next-how = add them to the plan with: oddside experiment plan --more 3

## Pictures

experiment-chart-across = across: { $across }, { $low } to { $high }; up: { $up }, { $from } to { $to }; 0 is { $least }, 9 is { $most }; a dot is not known
experiment-picture = { $name }: lines of equal result; crosses are batches made; the hatched part is not known
experiment-picture-held = held: { $held }

## Batch cards

experiment-card-title = Batch cards
experiment-card-batch = Batch { $number }
experiment-card-day = day { $day }
experiment-card-holds = holds { $water } of water
experiment-card-made = weighed
experiment-card-notes = Notes
experiment-card-mask = Dust harms lungs for good: mask on, sand damp, outdoors.
experiment-card-in-order = Make the batches in the order of their numbers. Write down what you see, also what was not planned.

## Mixes together, masses as weighed, pictures of one thing

experiment-mix-met = { $mix }: { $share } % of all wishes met
experiment-mix-met-unsure = these shares join means and know no noise: a mix is better only where it is named above
experiment-mix-picture = crosses: batches; rings: means with how far they may be off, 19 times in 20; filled: shown to be the best
experiment-picture-along = crosses: batches; the band: how far the line may be off, 19 times in 20
experiment-weighed = { $count } batches are taken as they were weighed
experiment-weighed-mixes = { $count } batches were weighed otherwise than their mix says; they count as that mix all the same
experiment-next-believed = best by all batches so far, made or not: { $mix }; expected { $value } ± { $deviation }
