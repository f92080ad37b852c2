namespace TenderKit.Sizing.Lighting;

/// <summary>Named classes of published standards.</summary>
public static class LightClasses
{
    /// <summary>The target of a class such as P4 or C3, or null when the name is not known.</summary>
    public static LightTarget? Find(string name) => throw new NotImplementedException();

    /// <summary>Names known, in the order of their standards.</summary>
    public static IReadOnlyList<string> Names => throw new NotImplementedException();
}
