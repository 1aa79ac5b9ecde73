# French, from memory: not yet read by a native founder.

# A charge made up from the shop's own heaps.

charge-head = { $name } : { $charged } dans le creuset pour { $metal } au bec, cible { $target }
charge-alone = Charge
charge-target-own = { $target }, avec vos propres limites
charge-weigh-out = peser, dans l'ordre de chargement
charge-cost = coût
charge-usual = neuf fois sur dix
charge-at-worst = au pire
charge-target = cible
charge-together = ensemble
charge-all-of-it = { $mass }, le tout
charge-part = { $mass } de { $heap }
charge-sure = sûr à { $share } % d'être dans la cible ({ $low } à { $high } % sur { $draws } tirages)
charge-sure-cost = { $cost } ; { $sure }
charge-held-by = tenu par { $bound }
limit-least = au moins { $low }
limit-most = au plus { $high }

binding-least = le minimum de { $of }
binding-most = le maximum de { $of }
binding-least-room = le minimum de { $of }, avec une marge pour les tas
binding-most-room = le maximum de { $of }, avec une marge pour les tas
binding-end = la fin de { $heap }
binding-use-up = { $heap } à épuiser

next-surer = plus sûr : { $steps }{ $beyond } ; alors sûr à { $sure } %{ $money }
next-cheaper = moins cher : { $steps }{ $beyond } ; alors sûr à { $sure } %{ $money }
next-more = { $mass } de plus de { $heap }
next-less = { $mass } de moins de { $heap }
next-beyond = { " " }(cela prend { $all })
next-beyond-heap = { $mass } de { $heap } de plus qu'il n'y en a
next-dearer = , pour { $by } de plus
next-less-money = , pour { $by } de moins
next-same-money = , pour le même prix

## Why no charge is made

not-made-no-heaps = aucun tas de métal n'est noté : écrire un [[metal_heap]] avec ses éléments dans shop.toml
not-made-no-metal = aucun métal n'est demandé : donner une masse au-dessus de zéro
not-made-melt-loss = une perte au feu de { $loss } ne laisse rien à couler
not-made-unknown-heap = épuiser « { $typed } » : pas de tas de ce nom ; tas : { $known }
not-made-money = prix des tas : { $one } et { $other } sont deux monnaies : écrire tous les prix dans l'une des deux
not-made-prices = un prix des tas n'est pas compris
not-made-wish = ce qui est sous [charge] n'est pas compris ; `oddside charge` dit ce qui ne va pas
not-made-too-little = il n'y a pas assez de métal : les tas donnent { $there }, et il en faut { $wanted }{ $help }
not-made-use-up = ce qu'il faut épuiser dépasse la charge, ou ce qu'il y en a : en demander moins, ou demander plus de métal{ $help }
not-made-out-of-reach = { $limits }{ $help }
not-made-together = les limites ne peuvent pas être tenues ensemble{ $help }
not-made-together-most = les limites ne peuvent pas être tenues ensemble : toutes les autres gardées, { $of } vient à { $nearest } au moins, et il faut { $wanted } au plus{ $help }
not-made-together-least = les limites ne peuvent pas être tenues ensemble : toutes les autres gardées, { $of } vient à { $nearest } au plus, et il faut { $wanted } au moins{ $help }
out-of-reach-high-all = aucun tas de { $metal } n'a assez peu de { $of } : ce qu'il y a vient à { $nearest } au moins, et il faut { $wanted } au plus
out-of-reach-low-all = aucun tas de { $metal } n'a assez de { $of } : ce qu'il y a vient à { $nearest } au plus, et il faut { $wanted } au moins
out-of-reach-high = il n'y a pas assez de { $metal } pauvre en { $of } : ce qu'il y a vient à { $nearest } au moins, et il faut { $wanted } au plus
out-of-reach-low = il n'y a pas assez de { $metal } riche en { $of } : ce qu'il y a vient à { $nearest } au plus, et il faut { $wanted } au moins
help-none = { "\u00A0" }; aucune matière courante ajoutée à ces tas n'y suffirait
help-add = { "\u00A0" }; ajouter au moins : { $stock }
help-stock = { $mass } de { $stock }
help-stock-most = { $mass } d'un tas à { $share } de { $of } au plus, comme { $stock }
help-stock-least = { $mass } d'un tas à { $share } de { $of } au moins, comme { $stock }

metal-aluminium = aluminium
metal-copper = bronze ou laiton
metal-zinc = zinc
metal-iron = fonte
metal-tin = étain

## Ordinary stock, as in crates/metal/data/charge_stock.toml

stock-steel-scrap = ferraille d'acier
stock-foundry-pig = fonte en gueuse
stock-75-ferrosilicon = ferrosilicium à 75 %
stock-ferromanganese = ferromanganèse
stock-graphite-recarburiser = recarburant de graphite
stock-aluminium-wire-or-sheet-99-5 = fil ou tôle d'aluminium, 99.5 %
stock-al-12si-ingot = lingot Al-12Si
stock-a356-ingot = lingot A356
stock-magnesium-ingot = lingot de magnésium
stock-copper-wire-or-pipe = fil ou tube de cuivre
stock-zinc-ingot = lingot de zinc
stock-tin-ingot = lingot d'étain
stock-50-silicon-copper-hardener = alliage mère cuivre-silicium à 50 %
stock-antimony = antimoine
stock-aluminium-ingot-99-7 = lingot d'aluminium, 99.7 %
