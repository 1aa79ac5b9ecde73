# How the poured mould freezes.

freeze-solid-after = solid after
freeze-between = between
freeze-last-at = last at
freeze-whole = all solid { $likely } after the mould is full ({ $between }), last at { $place }
freeze-pencil = by the law of moduli the heaviest section: { $between }
freeze-from = poured at { $pouring }, taken as { $start } when the mould is full
freeze-sand = sand: { $known }, { $water } water, conducts { $conducts }
freeze-sand-trial = by the slab timed in it
freeze-sand-damp = by the books, with the water of the heap
freeze-sand-usual = by the books, with the usual water
freeze-sand-oil = by the books, dry
freeze-contact = contact of metal and sand: { $likely } ({ $low } to { $high })
freeze-errors = what may be off: grid { $grid }, contact { $contact }, sand { $sand }
freeze-cells = { $cells } cells of { $size }, { $across } across the thinnest wall; metal in them off by { $mass }
freeze-pencil-short = the castings take longer than the law of moduli says, { $solved } and not { $pencil }: go by the longer
freeze-pencil-long = the castings are solid sooner than the law of moduli says, { $solved } and not { $pencil }: the law counts the heaviest section alone
freeze-few-cells = only { $across } cells of { $size } across the wall of { $wall }: its times are a guess; allow more cells with --cells
freeze-mass-off = the cells hold { $off } more or less metal than the solids: allow more cells with --cells
freeze-heat-off = the solver lost or made { $off } of all heat: take the times with caution
freeze-piece-missing = { $piece } is thinner than a cell and missing here: allow more cells with --cells
