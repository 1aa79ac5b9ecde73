# A charge made up from the shop's own heaps.

charge-head = { $name }: { $charged } into the crucible for { $metal } at the spout, to { $target }
charge-alone = Charge
charge-target-own = { $target }, with limits of your own
charge-weigh-out = weigh out, in the order of charging
charge-cost = cost
charge-usual = nine times in ten
charge-at-worst = at worst
charge-target = target
charge-together = together
charge-all-of-it = { $mass }, all of it
charge-part = { $mass } of { $heap }
charge-sure = { $share } % sure to come out in target ({ $low } to { $high } % by { $draws } draws)
charge-sure-cost = { $cost }; { $sure }
charge-held-by = held by { $bound }
limit-least = at least { $low }
limit-most = at most { $high }

binding-least = the least { $of }
binding-most = the most { $of }
binding-least-room = the least { $of }, with room for the heaps
binding-most-room = the most { $of }, with room for the heaps
binding-end = the end of { $heap }
binding-use-up = { $heap } to be used up

next-surer = surer: { $steps }{ $beyond }; { $sure } % sure then{ $money }
next-cheaper = cheaper: { $steps }{ $beyond }; { $sure } % sure then{ $money }
next-more = { $mass } more of { $heap }
next-less = { $mass } less of { $heap }
next-beyond = { " " }(that takes { $all })
next-beyond-heap = { $mass } more of { $heap } than you have
next-dearer = , for { $by } more
next-less-money = , for { $by } less
next-same-money = , for the same money

## Why no charge is made

not-made-no-heaps = no heap of metal is listed: write a [[metal_heap]] with its elements in shop.toml
not-made-no-metal = no metal is wanted: give a mass above nought
not-made-melt-loss = a melt loss of { $loss } leaves nothing to pour
not-made-unknown-heap = use up "{ $typed }": no heap of that name; heaps: { $known }
not-made-money = prices of heaps: { $one } and { $other } are two currencies: write every price in one of them
not-made-prices = a price of the heaps is not understood
not-made-wish = what stands under [charge] is not understood; `oddside charge` tells what is wrong
not-made-too-little = there is not metal enough: the heaps give { $there }, and { $wanted } is wanted{ $help }
not-made-use-up = what has to be used up is more than the charge, or more than there is of it: ask for less of it or for more metal{ $help }
not-made-out-of-reach = { $limits }{ $help }
not-made-together = the limits cannot be met together{ $help }
not-made-together-most = the limits cannot be met together: with all the others kept, { $of } comes to { $nearest } at least, and { $wanted } at most is wanted{ $help }
not-made-together-least = the limits cannot be met together: with all the others kept, { $of } comes to { $nearest } at most, and { $wanted } at least is wanted{ $help }
out-of-reach-high-all = no { $metal } heap is low enough in { $of }: what is there comes to { $nearest } at least, and { $wanted } at most is wanted
out-of-reach-low-all = no { $metal } heap is high enough in { $of }: what is there comes to { $nearest } at most, and { $wanted } at least is wanted
out-of-reach-high = there is not enough { $metal } that is low in { $of }: what is there comes to { $nearest } at least, and { $wanted } at most is wanted
out-of-reach-low = there is not enough { $metal } that is high in { $of }: what is there comes to { $nearest } at most, and { $wanted } at least is wanted
help-none = ; no ordinary stock added to these heaps would do it
help-add = ; add at least { $stock }
help-stock = { $mass } of { $stock }
help-stock-most = { $mass } of a heap with at most { $share } { $of }, such as { $stock }
help-stock-least = { $mass } of a heap with at least { $share } { $of }, such as { $stock }

metal-aluminium = aluminium
metal-copper = bronze or brass
metal-zinc = zinc
metal-iron = iron
metal-tin = pewter

## Ordinary stock, as in crates/metal/data/charge_stock.toml

stock-steel-scrap = steel scrap
stock-foundry-pig = foundry pig
stock-75-ferrosilicon = 75 % ferrosilicon
stock-ferromanganese = ferromanganese
stock-graphite-recarburiser = graphite recarburiser
stock-aluminium-wire-or-sheet-99-5 = aluminium wire or sheet, 99.5 %
stock-al-12si-ingot = Al-12Si ingot
stock-a356-ingot = A356 ingot
stock-magnesium-ingot = magnesium ingot
stock-copper-wire-or-pipe = copper wire or pipe
stock-zinc-ingot = zinc ingot
stock-tin-ingot = tin ingot
stock-50-silicon-copper-hardener = 50 % silicon-copper hardener
stock-antimony = antimony
stock-aluminium-ingot-99-7 = aluminium ingot, 99.7 %
