# What stands beside laws: workings on paper, `oddside why` and `oddside reckon`.
#
# The laws describe themselves in English only, so these pages are English as a whole and no other
# language has these messages.

## The words before what stands behind a figure

behind-because = because
behind-given = given
behind-taken = taken
behind-range = holds for
behind-narrower = narrower
behind-narrower-told = { $key } known exactly leaves { $left } of the band
behind-narrower-how = { $key } known exactly leaves { $left } of the band ({ $how })
behind-mind = mind
behind-doubt = doubt
behind-source = source
behind-again = again
reckon-asks-for = asks for
reckon-like = like
reckon-needed = needed
reckon-not-needed = not needed
reckon-else = else { $text }
reckon-of-the-metal = else that of the metal
reckon-list-foot = oddside reckon NAME tells what a law asks for; oddside reckon NAME key=figure … works it out.
reckon-range-foot = Any figure may be a range: "3 to 5 mm", "100 mm ± 2 mm".

## Workings

workings-title = Workings
workings-sheet = { $job }, sheet { $code }, { $by }
workings-given = Given: { $given }.
workings-because = Because: { $because }.
workings-range = Holds for: { $range }.
workings-numbers = Sources { $numbers }.
workings-sources = Sources
workings-section = How it freezes
workings-section-told = Upright section through the place of the castings that freezes last, as oddside freeze drew it: sand hatched, cores dotted, black what runs empty; lines join places that are solid at the same time, with its minutes from the full mould.

## What sets a figure

because-grades = either way, grades DCTG { $fine } to { $coarse } of hand moulding
because-stock = on each machined face, grades { $fine } to { $coarse }, from memory
because-draught = wanted over the whole depth; faces that grip sand want more
because-master = the working pattern contracts before the casting does
because-rapped = across the draw; along the draw it takes the contraction in full
because-shim = for contraction alone: add what is worn off and what is machined
because-pouring = measured in the crucible just before the pour; the hot end for thin tips far from a gate
because-slab-same = by the slab timed in this sand and this metal
because-slab-carried = by the slab timed in this sand, carried over from its metal to this one
because-books = by the books: one slab timed in your own sand narrows it
because-own-log = by what your own log has taught
because-contraction = each source beside its figure; hindered sides contract less
because-gives = a mould rammed soft gives, and the casting grows by that
because-demand = freezing and half of the superheat, three quarters at the high end; at the low end the superheat is lost in filling
because-neck = of a feeder beside its section; one that stands on it wants no neck
because-neck-iron = of a feeder beside its section; it shuts early, so that the swelling stays inside
because-poured = castings, feeders, sprue, a full basin, runner, slag trap and gates; the ingot mould is not in it
because-running = from seven tenths of it to two fifths more, as it is cut
because-choke = the foot of the sprue is the choke
because-all-together = all of them together
because-fastest-gate = the fastest gate, at the start, with the basin full
because-gates-even = gates of one size on plain runners to either side of the sprue
because-lip = the lip has to give as much as the choke takes, or the sprue draws air
because-first-metal = the first metal is the coldest and carries the loose sand
because-run-off = of each runner; or a pocket of the volume at its end
because-loss-own = weighed over three heats it is your own
because-loss-any = this furnace has no figure for the metal: from the best of any to the worst
because-tongs = tongs or shank come on top
because-turn-back = below { $heat } at the mould turn back to the furnace: it would run short
because-fuel = { $fuel }: the high end for the first heat of a cold furnace, less for the next
because-ferrosilicon = ferrosilicon with 75 % Si, dry, into the stream; half is gone in 5 minutes
because-zinc = what goes up in smoke before the mould is full, to a factor of three
because-runner-counted = runner drawn and counted: to the nearest gate at the low end, with the slag trap beside it at the high end
because-lay-on = the high end is what to lay on: { $mass }
because-cope-enough = the cope alone is heavy enough
because-clamps = in place of the irons; all tight before the first drop
because-all-cores = all cores of one casting
because-print-bears = core "{ $core }"; your sand bears { $strength }
because-print-compare = core "{ $core }"; compare with your own sand, [heap] strength
because-leave = from the end of the pour: move nothing, lift no weight off
because-open = from the end of the pour, on the late side; iron that may crack is left longer
because-open-uneven = from the end of the pour, on the late side; thick and thin hang together: they stay in the sand until they give no more
because-handle = if it stays in its sand; opened at its mark it burns the hand for { $time } more
