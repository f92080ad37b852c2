using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Reflection;

namespace TenderKit.Catalog.Families;

/// <summary>
/// One family of parts: a csv file, a table of the store and a record are three views of it. The columns are read off
/// the record once, so a new property of a record is at once a column of the file and of the store.
/// </summary>
public sealed class PartFamily
{
    /// <summary>Every family, in the order of the catalogue.</summary>
    public static readonly ImmutableArray<PartFamily> All =
    [
        new("luminaires", typeof(Luminaire)),
        new("modules", typeof(Module)),
        new("batteries", typeof(Battery)),
        new("controllers", typeof(Controller)),
        new("poles", typeof(Pole)),
        new("foundation_sets", typeof(FoundationSet)),
        new("cables", typeof(Cable)),
        new("protection", typeof(ProtectionDevice)),
        new("enclosures", typeof(Enclosure)),
        new("brackets", typeof(Bracket)),
        new("fixings", typeof(Fixing), optional: true),
        new("integrated_units", typeof(IntegratedUnit), optional: true),
        new("services", typeof(ServiceRate)),
    ];

    private PartFamily(string name, Type type, bool optional = false)
    {
        Name = name;
        Optional = optional;
        PartType = type;
        Columns = [.. Stored(typeof(Part)).Concat(Stored(type)).Select(p => new PartColumn(p))];
    }

    /// <summary>Name of the csv file without extension, and of the table.</summary>
    public string Name { get; }

    public Type PartType { get; }

    /// <summary>Whether a catalogue without it is whole.</summary>
    public bool Optional { get; }

    /// <summary>Columns common to all parts first, each in the order of the record.</summary>
    public ImmutableArray<PartColumn> Columns { get; }

    private static readonly FrozenDictionary<Type, PartFamily> ByType = All.ToFrozenDictionary(f => f.PartType);

    public static PartFamily Of(Part part) => ByType[part.GetType()];

    public static PartFamily Of<T>()
        where T : Part => ByType[typeof(T)];

    /// <summary>A new part whose properties hold their defaults.</summary>
    internal Part NewPart() => (Part)Activator.CreateInstance(PartType)!;

    private static IEnumerable<PropertyInfo> Stored(Type type) =>
        type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly).Where(p => p.CanWrite)
            .OrderBy(p => p.MetadataToken);
}
