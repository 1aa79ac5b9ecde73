# The pupil's sheet and the teacher's answers: what is worked out with a pencil, the rule in words, and
# the numbers that go into it.

pupil-title = Pupil's sheet
answers-title = Answers to the pupil's sheet
pupil-name = Name
pupil-lead = Work these out before the pour. Three figures are enough; the back of the sheet is for working. A number with a square before it is your own answer from further up.
answers-lead = Worked out from the numbers printed on the pupil's sheet, so that they tally with the pencil; a little apart is rounding. Beside each stands what the plan says, which counts in how far each number may be off.
pupil-answer = Answer
answers-in-the-plan = the plan: { $band }
pupil-your-answer = your answer { $number }
pupil-then = After the pour
pupil-weighed = Casting weighed, cold
pupil-filled = Seconds to fill, by the watch
pupil-longest = Longest side, measured
pupil-least-sure = Which of your numbers was furthest off, and how would you measure it better?
pupil-foot = Pencil sums from tables, no simulation. Only those with a task stand at the fire; the teacher and local rules come first.

pencil-pattern-length = pattern = finished casting × (1 + contraction)
pencil-casting-mass = mass = volume × density
pencil-poured-mass = poured = castings × (one casting + one feeder) + metal in the running system
pencil-charge = charge = poured × (1 + share for the ingot mould) ÷ (1 − melt loss)
pencil-sand-to-fill-the-flask = sand = (inside of the flask − patterns) × density of rammed sand
pencil-sand-to-have-ready = ready = rammed sand × 1.15, for what is spilt and struck off
pencil-choke-area = area = poured ÷ (density × time × discharge × √(2 × fall × head))
pencil-cope-lift = lift = density × (shadow × head − room above the joint), told by the mass it would raise
pencil-weight-on-the-cope = weight = surge × lift − cope, up to the next half kilogram; none where it is below nought
pencil-freezing-time-of-the-heaviest-section = time = constant × modulus × modulus

pencil-number-above-joint = room above the joint
pencil-number-casting = one casting
pencil-number-castings = castings
pencil-number-constant = constant
pencil-number-contraction = contraction
pencil-number-cope = rammed cope
pencil-number-density = density
pencil-number-discharge = discharge
pencil-number-feeder = one feeder
pencil-number-flask = inside of the flask
pencil-number-head = head
pencil-number-lift = lift
pencil-number-liquid-density = density, liquid
pencil-number-loss = melt loss
pencil-number-part = finished casting
pencil-number-pattern = patterns
pencil-number-pig-share = share for the ingot mould
pencil-number-poured = poured
pencil-number-rammed = rammed sand
pencil-number-running = running system
pencil-number-section = modulus
pencil-number-shadow = shadow on the joint
pencil-number-surge = surge
pencil-number-time = time
pencil-fall = fall of bodies
pencil-number-volume = volume

## A class

class-head = { $job } for { $pupils } pupils
class-moulds = moulds
class-flasks = flasks in use
class-groups = groups at once
class-heats = heats
class-metal = metal to be poured in all
class-sessions = lessons it takes
class-step = lesson { $session }, { $from } to { $to } min: { $what }
class-safety = all together: glasses, shoes and hair; who does what; nobody blows or sweeps dry sand
class-ram = each group rams its mould, takes the pattern out, blows nothing, closes it and marks it
class-clear = clear up, cover the moulds, wash hands
class-safety-fire = all together: who stands where, the line nobody steps over, what is done if metal is spilt
class-melt-again = the next heat is melted; groups work out the pupil's sheet and write up the first pours
class-pour = the grown-ups pour, mould by mould; the pupils time it and write it down
class-cool = nobody touches a mould; work out the pupil's sheet meanwhile
class-shake-out = groups open their moulds with gloves, on dry sand; the castings are hot for long
class-look = weigh, measure, look for defects; write it into the log
class-after = after lesson { $session }, and not before { $wait } min from the last pour: the grown-ups open the moulds with gloves, on dry sand; the class weighs, measures and looks for defects when it meets again, in { $look } min
class-heats-more = where a mould takes as much as it may, it is { $heats } heats, each more by { $minutes } min: weigh what the first mould took before the next heat is charged
class-role-riddles = sand: riddles, weighs and brings it
class-role-rams = rammer: fills and rams
class-role-joins = joiner: dusts, vents, draws the pattern, closes
class-role-writes = writer: times, weighs and writes down
class-role-clears = steward: keeps floor and tools clear, tells when something lies in the way
class-role-turns = roles change at every mould, or at half time; in a small group one pupil has two
class-role-fire = only the { $adults } grown-ups stand at the fire: one pours, one minds the line
class-group-large = { $pupils } pupils to a group: with more than { $most } some look on; have more flasks, or ram in two rounds
class-group-small = fewer than { $least } pupils to a group: roles double, and ramming takes longer
class-too-few = it takes { $needed } lessons and there are { $sessions }: have more flasks, a larger crucible, fewer castings, or longer lessons
class-sand-short = { $wanted } of sand for all moulds and a heap of { $heap }: ram in two rounds, or borrow sand
class-melt = the furnace is lit { $minutes } min before the lesson in which is poured
class-overnight = moulds stand until the next lesson: cover them with damp cloth, and feel every skin for dry edges before closing
class-distance = whoever has no task stands 2 m from metal and pour, behind a line on the floor
class-ingot = a dry, hot ingot mould stands ready for what is left over
class-water = no water, no damp sand and no drink near the metal
class-feet = leather over the shoes, long trousers outside them, nothing that melts on the skin
class-bearing = what is cast here bears no load, holds no pressure and brakes nothing
class-minutes = minutes are judgement, for pupils who ram their first mould: time your own class and change them
