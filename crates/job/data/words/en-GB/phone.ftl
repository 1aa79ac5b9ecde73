### The bench card on the phone, and how phones come in.

## The page on which a phone is paired

phone-welcome = Pair this phone
phone-welcome-first = 1. The shop's certificate
phone-welcome-certificate = Your phone does not know the laptop of your shop yet. Install the shop's certificate once: it vouches for nothing but addresses of local networks.
phone-welcome-install = Fetch the certificate
phone-welcome-compare = Before you trust it, compare its fingerprint (SHA-256), as your phone shows it, with the one in the terminal. This page may be told a lie, the terminal not:
phone-welcome-how = Open the file you fetched, install it as a certificate of an authority in the settings of the phone, and, where the settings ask for it, switch full trust on. Then open this address again: no warning stands there any more.
phone-welcome-then = 2. The code in the terminal
phone-welcome-code = Eight digits, as they stand in the terminal
phone-welcome-name = What you call this phone (may be left empty)
phone-welcome-pair = Pair
phone-wrong-code = That is not the code. Tries left: { $left }.
phone-no-code = No code is good any more: it was used, it is older than ten minutes, or it was tried wrongly too often. Make a new one in the terminal: oddside phones add

## In the terminal

phone-serve-open = for phones: { $address }
phone-serve-code = code for pairing a phone, good for { $minutes } minutes: { $code }
phone-serve-print = fingerprint of the shop's certificate, to be compared with what the phone shows: { $print }
phone-serve-who = Everybody in this network can try to come in; only paired phones are answered (oddside phones list). Ctrl-C closes it.
phone-none-paired = no phone is paired
phone-removed = { $name } is let in no more
phone-head-name = phone
phone-head-paired = paired

## Whoever is not paired

phone-not-paired = This phone is not paired, or not any more.
phone-not-paired-hint = What was written down is kept on it; pair it again to send it.
phone-pair = Pair this phone

## The bench card

phone-heap = At the heap
phone-weigh = Weigh
phone-test = Test
phone-ready = Ready?
phone-pour-goes-on = The pour goes on
phone-which-job = Which job?
phone-other-job = Another job
phone-no-jobs = No job lies in this folder yet.
phone-back-to-heap = Back to the heap
phone-back = Back
phone-next = Next
phone-stop = STOP
phone-server-gone = Oddside does not answer: the card shows the last plan, what you write down is kept here and sent later.
phone-stale = The program was renewed since this card was kept. All entries stay.
phone-renew = Take the new card
phone-loading = A moment: the plan is worked out.
phone-never-here = The plan of this job was never on this phone: it comes when the server answers.
phone-waits = This figure is worked out by the server and waits for it.

## What is kept and sent

phone-kept = Kept:
phone-kept-sent = kept here: #1, sent: #2
phone-not-kept = This could not be kept on the phone:
phone-refused = Not taken by the log, and still here: #1
phone-undo = Undo the last
phone-send = Send now

## Numbers

phone-unit = Unit
phone-delete = Delete a digit
phone-right = That is right
phone-leave-out = Leave it out
phone-as-last = as last time
phone-as-planned = as planned
phone-as-mixed = as the mix asks for

## Weighing

phone-which-mix = Which mix?
phone-how-much-sand = How much dry sand?
phone-part-of = #1 of #2
phone-drying = The weight to dry to
phone-dry-tub = The sand now, without its tub
phone-dry-now = How wet it is now
phone-dry-wanted = How wet it is to be

## Tests

phone-which-test = Which test?
phone-test-squeeze = squeeze
phone-test-drop = drop
phone-test-dent = ball dent
phone-test-bottle = bottle
phone-test-cylinder = cylinder
phone-test-bar = bar
phone-test-disc = disc
phone-test-compactability = compactability
phone-test-moisture = moisture

## The ten points

phone-ready-tells = Look at each and tick it only then. Before all ten are ticked there is no pour.
phone-ticked = #1 of #2 ticked
phone-pour = Pour

## The pour, step by step

phone-step-of = step #1 of #2
phone-step-red-lines = Each of these is true
phone-step-aloud = Say it aloud
phone-step-aloud-who = Who walks where with what, and which word stops everybody.
phone-step-melt = Melt
phone-step-cope = Close the mould and lay the weights on
phone-step-cope-closed = Closed, weighted, nobody leans over it from now on.
phone-step-ready = Is the metal hot enough?
phone-step-at = pour at
phone-step-not-below = not below
phone-step-ready-skim = Skim. Colder than this it goes into the ingot mould.
phone-step-fill = Pour
phone-step-takes = the mould takes
phone-step-fill-full = Without a pause, the basin full to the end.
phone-step-wait = Wait
phone-step-wait-hot = Leave it standing. No water near it.
phone-step-open = Open the mould
phone-step-open-how = Tongs and gloves: what is black may still burn. Damp the sand before it dusts.
phone-clock-begin = First drop
phone-clock-full = Full
phone-clock-opened = Opened
phone-clock-not-begun = begins with the first drop
phone-clock-not-poured = the pour was not timed
phone-clock-filling = seconds
phone-clock-filling-within = seconds: as planned
phone-clock-filling-after = seconds: longer than planned
phone-clock-opening = too early: until it may surely be opened
phone-clock-opening-within = perhaps: until it may surely be opened
phone-clock-opening-after = it may be opened

## How it came out

phone-how-out = How did it come out?
phone-what-poured = What was poured?
phone-castings-of = castings: #1
phone-other-count = Another number of castings
phone-how-many-castings = How many castings?
phone-mass-poured = Metal poured
phone-temperature = Temperature of the metal
phone-how-went = How did it go in?
phone-how-steady = steadily
phone-how-broken = with a break
phone-how-splashed = it splashed
phone-how-slow = slowly
phone-how-ran-short = the metal ran short
phone-sound = Is it good for its use?
phone-sound-yes = Yes
phone-sound-no = No
phone-sound-all = All of them
phone-sound-none = None of them
phone-sound-some = Some of them
phone-how-many-sound = How many are good?
phone-sound-of = good: #1 of #2
phone-looks = What is seen?
phone-keep = Keep it
phone-again = Once more from the start
