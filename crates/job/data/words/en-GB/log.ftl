### The shop's log.

log-entry-written = written: { $table } { $number }
log-entry-there = there already, left as it stands: { $table } { $number }
log-half-filled = { $table } { $number } is half-filled: it lacks { $keys } (oddside log change { $table } { $number } KEY=VALUE)
log-asked = { $table } { $number }: { $words }
log-sound = the file is sound: { $count } entries
log-nothing-asked = nothing contradicts itself
log-moved-in = { $file }: { $new } new entries, { $there } there already
log-renumbered = { $table } { $was } is { $number } here: its number was taken
log-written-files = { $count } files written to { $folder }
log-salvaged = saved: { $count } of { $table }
log-torn = a part of { $table } cannot be read; the last that was saved is number { $number }
log-links-lost = { $count } links to lost entries are left empty
log-head-lost = the head of the file was lost and was put back
log-newer = a newer oddside wrote this log: it is only read here
log-head-half = half-filled

## What is asked about

log-asks-poured-before-melted = poured before the heat was melted: which of the two times is right?
log-asks-poured-before-closed = poured before the mould was closed: which of the two times is right?
log-asks-opened-before-poured = the mould was opened before it was poured: which of the two times is right?
log-asks-closed-before-rammed = closed before it was rammed: which of the two times is right?
log-asks-heavier-than-charge = this casting is heavier than the whole charge of its heat: weigh it again, or look at the charge
log-asks-castings-heavier-than-pour = its castings are heavier together than what was poured: weigh again
log-asks-more-out-than-in = more metal came out of this heat than went in: weigh again
log-asks-another-metal = the mould was planned for another metal than the heat is of: is it the right mould?
log-asks-which-degrees = more than 250 K from the plan: was it read in Fahrenheit?
log-asks-mould-poured-twice = this mould was poured before: is it the right mould?
log-asks-contraction = shrank by more than 5 % or grew: is it the same size on pattern and casting?
log-asks-good-with-defect = good, and with a large defect: is it good for its use?
log-asks-humidity = the humidity of air is between 0 and 100 %
log-asks-moisture = moulding sand has no such moisture: between 0 and 25 % of wet mass
log-asks-below-nought = a mass, a length or a time is below nought
