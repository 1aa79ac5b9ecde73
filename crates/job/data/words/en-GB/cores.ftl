# Cores as solids: what is made, and what is left to the founder.

cores-none = nothing in this part has to be cored when it is drawn this way up
core-made = core { $name }: { $volume } of core sand, { $mass }, prints included, around { $place }
core-prints = core { $name }: { $count } prints, { $lengths } long, as long as wide up to 3 in; the pattern gets them with 0.4 mm of play
core-prints-by-sand = core { $name }: { $count } prints, { $lengths } long, so that this sand bears the core three times over; the pattern gets them with 0.4 mm of play
core-prints-by-job = core { $name }: { $count } prints, { $lengths } long as the job tells; the pattern gets them with 0.4 mm of play
core-one-print = core { $name } is held at one end only, by a print of { $length }: lengthen it until it outweighs the core, or set chaplets
core-box-halves = core { $name }: box of two halves, lower { $lower }, upper { $upper }, with { $open ->
    [one] one open side
   *[other] { $open } open sides
} to ram through
core-box-stepped = core { $name }: box of two halves that part along a step, lower { $lower }, upper { $upper }, with { $open ->
    [one] one open side
   *[other] { $open } open sides
} to ram through
core-box-slides = core { $name }: the box has { $count ->
    [one] one slide
   *[other] { $count } slides
}, drawn out level before the halves are lifted, along { $ways }; rub them down until they run easily, and mark which goes where
core-box-none = core { $name }: no box of two halves lets it go, with or without slides, { $held } stay held around { $place }: make the core in two pieces and paste them
core-box-none-sought = core { $name }: no box of two halves lets it go, and it is too finely cut for slides to be looked for; { $held } stay held around { $place }: make the core in two pieces and paste them
core-box-fails = core { $name }: its box could not be cut: { $why }
core-vent-straight = core { $name }: prick it with a straight wire, { $length } long and no thicker than { $across }, from print to print
core-vent-bent = core { $name }: its vent bends: ram in a string of wax { $length } long and no thicker than { $across } along the middle, and melt it out
core-vent-none = core { $name }: too thin for a vent down its middle: use open sand and vent its prints
core-left = { $volume } of sand around { $place } hold the pattern: { $remedy }; { $why }
hollows-small = { $count } small { $count ->
    [one] place holds
   *[other] places hold
} { $volume } of sand: fill or round them in the pattern
remedy-loose-piece = make that part of the pattern a loose piece
remedy-core = fill it with a core
remedy-drawback = back that block of sand with a plate and draw it sideways
remedy-turn = draw the part another way
hollow-opens-sideways = it opens to one side and is shallow
hollow-opens-long = it opens to one side, but is too long for a loose piece
hollow-deeper-than-high = it is deeper than it is high, and sand in it would break
hollow-runs-through = it runs through
hollow-no-single-move = no single straight move frees it
hollow-closed = it opens to no side
hollow-clear-when-turned = drawn that way nothing holds
