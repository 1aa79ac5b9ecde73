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
