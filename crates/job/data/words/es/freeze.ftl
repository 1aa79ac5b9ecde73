# Cómo se solidifica el molde colado.

freeze-solid-after = sólido tras
freeze-between = entre
freeze-last-at = lo último en
freeze-whole = todo sólido { $likely } después de llenarse el molde ({ $between }), lo último en { $place }
freeze-pencil = según la ley de los módulos, la sección más gruesa: { $between }
freeze-from = colado a { $pouring }, contado a { $start } con el molde lleno
freeze-sand = arena: { $known }, { $water } de agua, conduce { $conducts }
freeze-sand-trial = según la placa cronometrada en ella
freeze-sand-damp = según los libros, con el agua del montón
freeze-sand-usual = según los libros, con el agua habitual
freeze-sand-oil = según los libros, seca
freeze-contact = contacto de metal y arena: { $likely } ({ $low } a { $high })
freeze-errors = lo que puede desviarse: malla { $grid }, contacto { $contact }, arena { $sand }
freeze-cells = { $cells } celdas de { $size }, { $across } a través de la pared más delgada; desvío de metal { $mass }
freeze-pencil-short = las piezas tardan más de lo que dice la ley de los módulos, { $solved } y no { $pencil }: cuente con lo más largo
freeze-pencil-long = las piezas están sólidas antes de lo que dice la ley de los módulos, { $solved } y no { $pencil }: la ley cuenta solo la sección más gruesa
freeze-few-cells = solo { $across } celdas de { $size } a través de la pared de { $wall }: sus tiempos son una conjetura; permita más celdas con --cells
freeze-mass-off = las celdas contienen { $off } de metal de más o de menos que los sólidos: permita más celdas con --cells
freeze-heat-off = el cálculo perdió o creó { $off } de todo el calor: tome los tiempos con cautela
freeze-piece-missing = { $piece }: más delgada que una celda, falta aquí; permita más celdas con --cells
