using Xunit;

namespace TenderKit.Documents.Tests;

/// <summary>Tests that change the culture or the time zone of the process run alone.</summary>
[CollectionDefinition("world", DisableParallelization = true)]
public static class World;
