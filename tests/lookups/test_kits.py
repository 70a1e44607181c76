"""What is in a kit's bag."""

from app.lookups.kits import kit_now, kits_named
from app.work.holding import hold
from app.work.kits import make_kit, open_kit, sell_kit
from tests.counter_shop import a_shop


def test_a_bag_is_with_its_skeins_until_it_is_opened(studio):
    shop = a_shop(studio)
    kit = shop.do(make_kit, "Weir Cap", shop.skeins[0][:2])
    now = shop.ask(kit_now, kit)
    assert (now.name, now.order, now.holds) == ("Weir Cap", None, ())
    assert {one.yarn for one in now.skeins} == set(shop.skeins[0][:2])
    assert [found.id for found in shop.ask(kits_named, "cap weir")] == [kit]
    shop.do(open_kit, kit, shop.shelves[0])
    assert shop.ask(kit_now, kit).skeins == ()
    assert shop.ask(kits_named, "cap") == ()
    assert shop.ask(kits_named, " ") == ()


def test_a_sold_bag_says_with_which_order(studio):
    shop = a_shop(studio)
    kit = shop.do(make_kit, "Weir Cap", shop.skeins[0][:2])
    shop.do(sell_kit, kit)
    now = shop.ask(kit_now, kit)
    assert (now.order, len(now.skeins)) == ("T1", 2)


def test_a_hold_on_one_of_its_skeins_is_on_the_bag(studio):
    shop = a_shop(studio)
    kit = shop.do(make_kit, "Weir Cap", shop.skeins[0][:2])
    shop.do(hold, "yarn", shop.skeins[0][0], "stain")
    (held,) = shop.ask(kit_now, kit).holds
    assert held.why == "stain"
