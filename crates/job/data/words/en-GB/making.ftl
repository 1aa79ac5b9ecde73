# What the terminal shows of a pattern that is made: oddside pattern.

making-head = pattern for { $job }
making-sizes = part { $part }, pattern { $pattern }
making-contracts = made larger by { $x } along x, { $y } along y, { $z } along z of the drawing
making-joint = joint { $height } above the lowest point of the pattern
making-joint-wanders = joint { $low } to { $high } above the lowest point of the pattern: it follows the parting line

making-step = step
making-volume = volume
making-change = change
making-part = the part
making-stock = stock on machined faces
making-contraction = contraction
making-draught = draught
making-hollows = hollows filled for the cores
making-prints = core prints

making-piece = solid
making-size = size
making-plastic = plastic
making-pattern = pattern
making-drag = drag half
making-cope = cope half
making-oddside = oddside
making-board = board
making-numbered = { $what }, piece { $number }

making-gauge = height gauge, heights over the bed in mm
making-station = place
making-height = height
making-slope = slope

making-left-on = stock: { $depth } on { $area }, { $places ->
    [one] one face or hole
   *[other] { $places } faces or holes
}, adds { $volume }
making-core-prints = core { $name }: its hollow is filled and { $count } prints stand out { $lengths }, with { $play } of play around those of the core; place and width have the contraction, the length is measured after it
making-core-print = core { $name }: its hollow is filled and one print stands out { $lengths }, with { $play } of play around that of the core; place and width have the contraction, the length is measured after it
making-cores-by-hand = the job gives core prints by hand: the prints of { $count } cores that the part needs are not made and their hollows not filled; take out [[pattern.print]] to have them
making-cores-none = no core is made for the hollows, and none is filled: { $why }
making-walls = draught given to { $walls } walls
making-tight = no room for all of the draught at { $place } of the drawing, where { $gap } of sand stands between the walls: { $has } was given of { $wanted }
making-tight-more = { $walls ->
    [one] one more wall has
   *[other] { $walls } more walls have
} no room for all of the draught
making-no-draught = no draught was put on ({ $why }): draw it into the part, or ask for less under pattern.draught
making-walls-held = { $area } of wall has metal above and below and stays without draught
making-holds-sand = drawn straight up and down it holds { $volume } of sand: that room wants a core, a loose piece or another joint
making-pins = pins: two rods of { $rod }, tight in the cope half, in holes of { $hole } in the drag half, { $depth } deep above and { $wide } below
making-no-pins = the joint has no room for pins: put the halves together by a mark
making-loose = loose piece { $number }
making-loose-drag = loose piece { $number } around { $place } stays in the drag when the pattern is drawn: then move it { $length } along { $way } into the hollow, and lift it out
making-loose-cope = loose piece { $number } around { $place } stays in the cope when the pattern is drawn: turn the cope over, move it { $length } along { $way } into the hollow, and lift it out
making-loose-pins = loose piece { $number }: two pins of { $rod } from outside through it and { $depth } into the pattern hold it; pull them once the sand is firm around it
making-loose-no-pins = loose piece { $number } has no room for two pins: hold it with one wire until the sand is firm around it
making-loose-stuck = no loose piece frees the { $volume } of sand around { $place }, it would have to go through { $sand } of sand: give that place a core, or turn the part
making-dowels = { $dowels } dowels join the pieces
making-glued = { $cuts } cuts have no room for a dowel: glue them flat on flat
making-fill = oddside, pattern and drag leave { $gap } of their box empty and fill { $overlap } twice
making-thin-walls = printed walls of { $has } give under the rammer: print them { $wanted } thick
making-light-infill = an infill of { $has } lets roofs spring under the rammer: print { $wanted }
making-coarse-layers = the sand keys into layers of { $has }: print them { $wanted } high, or fill them
making-rub-along = seal the print and rub its walls down along the draw: layer lines across it tear the sand
