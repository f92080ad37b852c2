using CsCheck;
using PdfSharp.Drawing;
using TenderKit.Documents.Drawings;
using Xunit;

namespace TenderKit.Documents.Tests.Drawings;

public class FreePlaceTests
{
    private static readonly XRect Left = new(0, 0, 20, 8);
    private static readonly XRect Right = new(80, 0, 20, 8);

    [Fact]
    public void The_first_place_the_curve_does_not_cross_is_taken()
    {
        Assert.Equal(Left, FreePlace.Of([Left, Right], [new(0, 50), new(100, 50)]));
        Assert.Equal(Right, FreePlace.Of([Left, Right], [new(0, 4), new(30, 4), new(100, 50)]));
        Assert.Equal(Right, FreePlace.Of([Left, Right], [new(0, 50), new(100, 50)], new XRect(10, 2, 30, 4)));
    }

    [Fact]
    public void A_steep_stroke_between_two_points_counts_as_crossing() =>
        Assert.Equal(Right, FreePlace.Of([Left, Right], [new(10, -10), new(10, 20), new(100, 50)]));

    [Fact]
    public void Without_any_free_place_the_one_crossed_least_is_taken() =>
        Assert.Equal(Right, FreePlace.Of([Left, Right], [new(0, 4), new(5, 4), new(10, 4), new(15, 4), new(90, 4), new(95, 40)]));

    [Fact]
    public void A_label_with_a_free_place_never_sits_on_the_curve() =>
        Gen.Double[0, 40].Array[60].Sample(heights =>
        {
            XPoint[] curve = [.. heights.Select((y, i) => new XPoint(i * 2, y))];
            XRect[] places = [new(0, 10, 30, 8), new(40, 20, 30, 8), new(0, 42, 30, 8)];
            var place = FreePlace.Of(places, curve);
            Assert.DoesNotContain(curve, p => place.Contains(p));
        }, iter: 300);
}
