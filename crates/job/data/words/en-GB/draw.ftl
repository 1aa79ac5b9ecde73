# Ways to draw a part.

draw-way = cope lifted along
draw-held = sand held
draw-undercut = undercut
draw-cope = in the cope
draw-drag = in the drag
draw-wanders = joint wanders
draw-shadow = shadow
draw-clear = as the job lays it, along { $way }, nothing is held: it draws
draw-holds = as the job lays it, along { $way }, { $held } of sand are held

# Where its skin wants mending.

skin-draught = { $count ->
        [one] 1 wall, { $area }, wants
       *[other] { $count } walls, { $area } in all, want
    } more draught; the worst around { $place } has { $has } of { $wants } over { $depth }: `pattern` gives it unless told otherwise
skin-thin-metal = { $area } of wall around { $place } is { $has } thick, thinner than the { $least } that this metal commonly runs: thicken it, or pour hotter through more gates
skin-thin-sand = the sand over { $area } around { $place } is { $has } thick: rammed by hand it stands from { $least }; open the gap, close it, or fill it with a core
skin-corners = { $count ->
        [one] 1 inside corner
       *[other] { $count } inside corners
    } without a fillet, { $length } in all, the longest turning by { $turn } around { $place }: they tear sand and start cracks
skin-thickest = the thickest metal, a ball of { $ball }, lies behind { $place }: it freezes last
