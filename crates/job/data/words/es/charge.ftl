# Spanish, from memory: not yet read by a native founder.

# A charge made up from the shop's own heaps.

charge-head = { $name }: { $charged } al crisol para { $metal } en el pico, según { $target }
charge-alone = Carga
charge-target-own = { $target }, con límites propios
charge-weigh-out = pese, en el orden de carga
charge-cost = costo
charge-usual = nueve de cada diez veces
charge-at-worst = en el peor caso
charge-target = objetivo
charge-together = en total
charge-all-of-it = { $mass }, todo lo que hay
charge-part = { $mass } de { $heap }
charge-sure = { $share } % de probabilidad de quedar en el objetivo (de { $low } a { $high } % con { $draws } sorteos)
charge-sure-cost = { $cost }; { $sure }
charge-held-by = limitada por { $bound }
limit-least = { $low } como mínimo
limit-most = { $high } como máximo

binding-least = el mínimo de { $of }
binding-most = el máximo de { $of }
binding-least-room = el mínimo de { $of }, con margen por los montones
binding-most-room = el máximo de { $of }, con margen por los montones
binding-end = el fin de { $heap }
binding-use-up = { $heap }, que debe gastarse

next-surer = más segura: { $steps }{ $beyond }; entonces { $sure } % de probabilidad{ $money }
next-cheaper = más barata: { $steps }{ $beyond }; entonces { $sure } % de probabilidad{ $money }
next-more = { $mass } más de { $heap }
next-less = { $mass } menos de { $heap }
next-beyond = { " " }(eso pide { $all })
next-beyond-heap = { $mass } de { $heap } más de lo que usted tiene
next-dearer = , por { $by } más
next-less-money = , por { $by } menos
next-same-money = , por el mismo dinero

## Why no charge is made

not-made-no-heaps = no hay ningún montón de metal en la lista: escriba un [[metal_heap]] con sus elementos en shop.toml
not-made-no-metal = no se pide metal: dé una masa mayor que cero
not-made-melt-loss = una merma de fusión de { $loss } no deja nada que colar
not-made-unknown-heap = gastar "{ $typed }": no hay montón con ese nombre; montones: { $known }
not-made-money = precios de los montones: { $one } y { $other } son dos monedas: escriba todos los precios en una de ellas
not-made-prices = no se entiende un precio de los montones
not-made-wish = no se entiende lo que está en [charge]; `oddside charge` dice qué está mal
not-made-too-little = no hay bastante metal: los montones dan { $there }, y se piden { $wanted }{ $help }
not-made-use-up = lo que debe gastarse es más que la carga, o más de lo que hay: pida gastar menos o pida más metal{ $help }
not-made-out-of-reach = { $limits }{ $help }
not-made-together = los límites no se pueden cumplir a la vez{ $help }
not-made-together-most = los límites no se pueden cumplir a la vez: respetando todos los demás, el contenido de { $of } queda en { $nearest } como mínimo, y se pide { $wanted } como máximo{ $help }
not-made-together-least = los límites no se pueden cumplir a la vez: respetando todos los demás, el contenido de { $of } queda en { $nearest } como máximo, y se pide { $wanted } como mínimo{ $help }
out-of-reach-high-all = ningún montón de { $metal } es bastante bajo en { $of }: lo que hay da { $nearest } como mínimo, y se pide { $wanted } como máximo
out-of-reach-low-all = ningún montón de { $metal } es bastante alto en { $of }: lo que hay da { $nearest } como máximo, y se pide { $wanted } como mínimo
out-of-reach-high = no hay bastante { $metal } bajo en { $of }: lo que hay da { $nearest } como mínimo, y se pide { $wanted } como máximo
out-of-reach-low = no hay bastante { $metal } alto en { $of }: lo que hay da { $nearest } como máximo, y se pide { $wanted } como mínimo
help-none = ; ningún material corriente añadido a estos montones lo lograría
help-add = ; añada al menos { $stock }
help-stock = { $mass } de { $stock }
help-stock-most = { $mass } de un montón con { $share } de { $of } como máximo, por ejemplo { $stock }
help-stock-least = { $mass } de un montón con { $share } de { $of } como mínimo, por ejemplo { $stock }

metal-aluminium = aluminio
metal-copper = bronce o latón
metal-zinc = zinc
metal-iron = hierro
metal-tin = peltre

## Ordinary stock, as in crates/metal/data/charge_stock.toml

stock-steel-scrap = chatarra de acero
stock-foundry-pig = arrabio de fundición
stock-75-ferrosilicon = ferrosilicio al 75 %
stock-ferromanganese = ferromanganeso
stock-graphite-recarburiser = recarburante de grafito
stock-aluminium-wire-or-sheet-99-5 = alambre o chapa de aluminio, 99.5 %
stock-al-12si-ingot = lingote Al-12Si
stock-a356-ingot = lingote A356
stock-magnesium-ingot = lingote de magnesio
stock-copper-wire-or-pipe = alambre o tubo de cobre
stock-zinc-ingot = lingote de zinc
stock-tin-ingot = lingote de estaño
stock-50-silicon-copper-hardener = aleación madre cobre-silicio al 50 %
stock-antimony = antimonio
stock-aluminium-ingot-99-7 = lingote de aluminio, 99.7 %
