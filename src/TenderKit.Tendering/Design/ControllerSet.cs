using TenderKit.Catalog.Families;

namespace TenderKit.Tendering.Design;

/// <summary>
/// Controllers of one kind on one battery, each with its own share of the modules: their charge currents add up, as do their limits on the
/// array, their own use, weight and volume; the lamp hangs on one of them. Common practice, no source.
/// </summary>
public static class ControllerSet
{
    /// <summary>Most that are tried side by side.</summary>
    public const int Most = 2;

    /// <summary>Numbers of a controller that may stand side by side: one, or more where its maker allows it.</summary>
    public static IEnumerable<int> CountsOf(Controller controller) => Enumerable.Range(1, controller.ParallelAllowed == true ? Most : 1);

    /// <summary>The set as one controller.</summary>
    /// <param name="count">Controllers side by side, 1 or more.</param>
    public static Controller Of(Controller controller, int count) => count == 1
        ? controller
        : controller with
        {
            RatedChargeA = controller.RatedChargeA * count,
            MaxArrayShortCircuitA = controller.MaxArrayShortCircuitA * count,
            MaxArrayWpPerV = controller.MaxArrayWpPerV * count,
            OwnUseW = controller.OwnUseW * count,
            WeightKg = controller.WeightKg * count,
            VolumeM3 = controller.VolumeM3 * count,
        };
}
