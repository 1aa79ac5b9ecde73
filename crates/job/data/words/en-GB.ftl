# The trade words that the two Englishes write differently, as the British ones. Everything in the
# program is written in these; the other lists answer to the same names.

mould = mould
moulds = moulds
moulded = moulded
moulder = moulder
moulders = moulders
moulding = moulding
feeder = feeder
feeders = feeders
aluminium = aluminium
grey = grey
draught = draught
draughts = draughts
vapour = vapour
vapours = vapours
colour = colour
colours = colours
centre = centre
centres = centres
litre = litre
litres = litres
metre = metre
metres = metres
programme = programme
plough = plough
ploughs = ploughs
labour = labour
