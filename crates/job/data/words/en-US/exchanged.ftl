# The two Englishes: the British word by which everything is written, and the American one that
# stands in its place. The list is closed: a word with two meanings does not go in here.

mould = mold
moulds = molds
moulded = molded
moulder = molder
moulders = molders
moulding = molding
feeder = riser
feeders = risers
aluminium = aluminum
grey = gray
draught = draft
draughts = drafts
vapour = vapor
vapours = vapors
colour = color
colours = colors
centre = center
centres = centers
litre = liter
litres = liters
metre = meter
metres = meters
programme = program
plough = plow
ploughs = plows
labour = labor
