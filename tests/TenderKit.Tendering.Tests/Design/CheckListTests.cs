using TenderKit.Tendering.Design;
using Xunit;

namespace TenderKit.Tendering.Tests.Design;

public sealed class CheckListTests
{
    [Fact]
    public void Numbers_and_records_agree_on_what_fails_and_by_how_much()
    {
        var random = new Random(7);
        for (var trial = 0; trial < 500; trial++)
        {
            var values = Enumerable.Range(0, 5).Select(_ => (Kind: random.Next(3), Required: random.Next(-3, 4), Offered: random.Next(-3, 4))).ToArray();
            void Add(CheckList list)
            {
                foreach (var (kind, required, offered) in values)
                {
                    if (kind == 0) list.AtLeast("a", "A", "p", required, offered, "W", $"rule {required}");
                    else if (kind == 1) list.AtMost("b", "B", "q", required, offered, "W", "rule");
                    else list.YesNo("c", "C", "r", required > 0, offered > 0, $"schedule {offered}");
                }
            }

            var numbers = new CheckList(false);
            Add(numbers);
            var failed = CheckList.Record(Add).Where(c => !c.Complies).ToArray();
            Assert.Equal(failed.Length == 0, numbers.Complies);
            Assert.Equal(failed.Length, numbers.FailedCount);
            if (failed.Length > 0) Assert.Equal(failed.Max(c => -(c.MarginFraction ?? -1)), numbers.WorstShortfall, 12);
        }
    }

    [Fact]
    public void The_nearest_miss_is_the_same_counted_or_recorded()
    {
        var random = new Random(11);
        for (var trial = 0; trial < 200; trial++)
        {
            var (counted, recorded) = (new Rejections(), new Rejections());
            for (var part = 0; part < 6; part++)
            {
                var (a, b, name) = (random.Next(1, 9), random.Next(1, 9), $"part {part}");
                void Add(CheckList list)
                {
                    list.AtLeast("a", "A", "first", 5, a, "W", $"rule {a}");
                    list.AtMost("b", "B", "second", 5, b, "A", "rule");
                }

                Assert.Equal(recorded.Accept(() => name, CheckList.Record(Add)), counted.Accept(() => name, Add));
            }

            Assert.Equal(recorded.NearestMiss, counted.NearestMiss);
        }
    }

    [Fact]
    public void A_text_is_not_made_while_only_numbers_are_asked_for()
    {
        var made = 0;
        string Text()
        {
            made++;
            return "text";
        }

        new CheckList(false).AtLeast("a", "A", "p", 2, 1, "W", $"rule {Text()}");
        Assert.Equal(0, made);
        Assert.Equal("rule text", Assert.Single(CheckList.Record(list => list.AtLeast("a", "A", "p", 2, 1, "W", $"rule {Text()}"))).Basis);
    }
}
