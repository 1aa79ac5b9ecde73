# Comment le moule coulé se solidifie.

freeze-solid-after = solide après
freeze-between = entre
freeze-last-at = en dernier à
freeze-whole = tout est solide { $likely } après le remplissage du moule ({ $between }), en dernier à { $place }
freeze-pencil = d'après la loi des modules, la section la plus massive : { $between }
freeze-from = coulé à { $pouring }, compté à { $start } quand le moule est plein
freeze-sand = sable : { $known }, { $water } d'eau, conduit { $conducts }
freeze-sand-trial = d'après la plaque chronométrée dans ce sable
freeze-sand-damp = d'après les livres, avec l'eau du tas
freeze-sand-usual = d'après les livres, avec l'eau habituelle
freeze-sand-oil = d'après les livres, sec
freeze-contact = contact du métal et du sable : { $likely } ({ $low } à { $high })
freeze-errors = écarts possibles : maillage { $grid }, contact { $contact }, sable { $sand }
freeze-cells = { $cells } cellules de { $size }, { $across } dans la paroi la plus mince ; écart de métal { $mass }
freeze-pencil-short = les pièces mettent plus longtemps que ne le dit la loi des modules, { $solved } et non { $pencil } : comptez le plus long
freeze-pencil-long = les pièces sont solides plus tôt que ne le dit la loi des modules, { $solved } et non { $pencil } : la loi ne compte que la section la plus massive
freeze-few-cells = seulement { $across } cellules de { $size } dans la paroi de { $wall } : ses temps sont une estimation ; accordez plus de cellules avec --cells
freeze-mass-off = les cellules contiennent { $off } de métal en plus ou en moins que les solides : accordez plus de cellules avec --cells
freeze-heat-off = le calcul a perdu ou créé { $off } de toute la chaleur : prenez les temps avec prudence
freeze-piece-missing = { $piece } : plus mince qu'une cellule, manque ici ; accordez plus de cellules avec --cells
