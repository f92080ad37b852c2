using System.Collections.Immutable;
using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting;

public class PhotometricAnalysisTests
{
    [Fact]
    public void Lambertian_zones_are_squares_of_sines()
    {
        // closed form: the flux of a Lambertian source up to gamma is flux x sin^2(gamma), half of it on either side
        var zones = ZoneFlux.Of(Distributions.Lambertian(1000));
        Assert.Equal(125, zones.ForwardLowLm, 0.1);
        Assert.Equal(250, zones.ForwardMediumLm, 0.1);
        Assert.Equal(500 * (0.969846 - 0.75), zones.ForwardHighLm, 0.1);
        Assert.Equal(500 * (1 - 0.969846), zones.BackVeryHighLm, 0.1);
        Assert.Equal((0, 0), (zones.UplightLowLm, zones.UplightHighLm));
        Assert.Equal(1000, zones.TotalLm, 0.5);
    }

    [Fact]
    public void Isotropic_zones_are_differences_of_cosines()
    {
        // closed form: flux / 2 x (cos a - cos b) over all planes
        var zones = ZoneFlux.Of(Distributions.Isotropic(1000));
        Assert.Equal(500 * 0.173648, zones.UplightLowLm, 0.1);
        Assert.Equal(500 * (1 - 0.173648), zones.UplightHighLm, 0.1);
        Assert.Equal(250 * (1 - 0.866025), zones.BackLowLm, 0.1);
    }

    [Theory]
    [InlineData(100, 200, 100, 0, 0, 0, 0, 0)] // limits of IES TM-15-11, addendum A, from memory; equal to a limit is within it
    [InlineData(111, 0, 0, 0, 0, 1, 0, 0)]
    [InlineData(0, 1001, 0, 0, 0, 2, 0, 0)]
    [InlineData(0, 0, 2600, 0, 0, 4, 0, 4)] // back high over 2500 lm counts for glare too
    [InlineData(0, 0, 0, 0.5, 0, 0, 1, 0)]
    [InlineData(0, 0, 0, 11, 0, 0, 2, 0)]
    [InlineData(0, 0, 0, 0, 101, 0, 0, 2)]
    [InlineData(9000, 9000, 9000, 2000, 800, 5, 5, 5)]
    public void Ratings(double backLow, double backMedium, double backHigh, double uplight, double veryHigh, int b, int u, int g)
    {
        var zones = new ZoneFlux(0, 0, 0, veryHigh, backLow, backMedium, backHigh, 0, 0, uplight);
        var rating = ZoneRating.Of(zones, isSymmetric: false);
        Assert.Equal((b, u, g), (rating.Backlight, rating.Uplight, rating.Glare));
    }

    [Fact]
    public void A_symmetric_luminaire_is_let_off_for_its_back()
    {
        var zones = new ZoneFlux(0, 0, 1500, 0, 0, 0, 1500, 0, 0, 0);
        Assert.Equal(1, ZoneRating.Of(zones, isSymmetric: true).Glare); // 660 to 1800 lm, from memory
        Assert.Equal(3, ZoneRating.Of(zones, isSymmetric: false).Glare); // back high 1000 to 2500 lm, from memory
        Assert.Equal("B3 U0 G3", ZoneRating.Of(zones, isSymmetric: false).ToString());
    }

    [Theory]
    [InlineData(600, 300, 60, 0)] // EN 13201-2 annex A, from memory; cd/klm at 70, 80, 90 degrees
    [InlineData(600, 200, 50, 1)]
    [InlineData(600, 150, 30, 2)]
    [InlineData(600, 100, 20, 3)]
    [InlineData(500, 100, 10, 4)]
    [InlineData(350, 100, 10, 5)]
    [InlineData(350, 100, 0, 6)]
    public void Intensity_classes(double at70, double at80, double at90, int expected)
    {
        Assert.Equal(expected, new CutOffIntensities(at70, at80, at90, 0, 0).GlareClass);
        Assert.Equal(Math.Min(expected, 3), new CutOffIntensities(at70, at80, at90, 5, 5).GlareClass); // light above 95 degrees: G*3 at best
    }

    [Fact]
    public void Cut_off_is_per_thousand_lumens_of_the_luminaire()
    {
        // Lambertian: cos(gamma) 1000 / pi cd per 1000 lm
        var cutOff = CutOffIntensities.Of(Distributions.Lambertian(7000));
        Assert.Equal(1000 / Math.PI * 0.342020, cutOff.At70CdPerKlm, 0.1);
        Assert.Equal(1000 / Math.PI * 0.173648, cutOff.At80CdPerKlm, 0.1);
        Assert.Equal(0, cutOff.At90CdPerKlm, 1e-9);
        Assert.Equal(6, cutOff.GlareClass);
    }

    [Fact]
    public void Everything_about_one_luminaire()
    {
        ImmutableArray<double> planes = [0, 90, 180, 270, 360], gammas = [0, 60, 90];
        var d = new LightDistribution(planes, gammas, [100, 50, 0, 100, 300, 0, 100, 50, 0, 100, 20, 0, 100, 50, 0], 500, 4);
        var analysis = PhotometricAnalysis.Of(d);
        Assert.Equal((300, 90, 60), (analysis.PeakIntensityCd, analysis.PeakPlaneDegrees, analysis.PeakGammaDegrees));
        Assert.Equal(DistributionSymmetry.LeftRight, analysis.Symmetry);
        Assert.Equal(d.FluxLm / 500, analysis.LightOutputRatio!.Value, 1e-12);
        Assert.Equal(d.FluxLm / 4, analysis.EfficacyLmPerW!.Value, 1e-12);
        Assert.Equal(d.FluxLm, analysis.Zones.TotalLm, 1e-9);
        Assert.True(analysis.StreetSideFraction > 0.5);
    }

    [Fact]
    public void Unknown_watts_and_absolute_photometry_give_no_ratio()
    {
        var analysis = PhotometricAnalysis.Of(Distributions.Lambertian(1000));
        Assert.Null(analysis.EfficacyLmPerW);
        Assert.Null(analysis.LightOutputRatio);
        Assert.Throws<ArgumentException>(() => PhotometricAnalysis.Of(Distributions.Of(90, (_, _) => 0)));
    }

    [Fact]
    public void Symmetries_are_found_in_the_values()
    {
        Assert.Equal(DistributionSymmetry.Rotational, SymmetryFinder.Of(Distributions.Lambertian(1000)));
        Assert.Equal(DistributionSymmetry.LeftRight, SymmetryFinder.Of(Distributions.Skewed(1000, 0.5, 0)));
        Assert.Equal(DistributionSymmetry.None, SymmetryFinder.Of(Distributions.Skewed(1000, 0.5, 0.5)));
        Assert.Equal(DistributionSymmetry.Quadrants, SymmetryFinder.Of(Distributions.Of(90, (c, g) => (90 - g) * (2 + Math.Cos(c * Math.PI / 90)))));
        Assert.Equal(DistributionSymmetry.StreetHouse, SymmetryFinder.Of(Distributions.Of(90, (c, g) => (90 - g) * (2 + Math.Cos(c * Math.PI / 180)))));
    }

    [Fact]
    public void Polar_curves_run_through_straight_down()
    {
        var d = Distributions.Skewed(3000, 0.5, 0);
        var across = PolarCurve.InPlane(d, 90);
        Assert.Equal((90, 270), (across.FirstPlaneDegrees, across.SecondPlaneDegrees));
        Assert.Equal(181, across.Points.Length);
        Assert.Equal((-90, 0, 90), (across.Points[0].GammaDegrees, across.Points[90].GammaDegrees, across.Points[^1].GammaDegrees));
        Assert.Equal(3, across.Points[150].IntensityCd / across.Points[30].IntensityCd, 1e-9); // 60 degrees: (1 + 0.5) / (1 - 0.5)
        Assert.Equal([0, 90], PolarCurve.Usual(d).Take(2).Select(c => c.FirstPlaneDegrees));
        Assert.Equal(3, PolarCurve.Usual(d).Length);
    }
}
