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
