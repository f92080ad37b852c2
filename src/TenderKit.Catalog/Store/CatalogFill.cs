using Microsoft.Data.Sqlite;
using TenderKit.Catalog.Families;

namespace TenderKit.Catalog.Store;

/// <summary>
/// Puts parts and photometric files in place of all there are, one by one, in one transaction: without <see cref="Commit"/> nothing has
/// changed. Statements are prepared once.
/// </summary>
internal sealed class CatalogFill : IDisposable
{
    private readonly SqliteConnection connection;
    private readonly SqliteTransaction transaction;
    private readonly Dictionary<Type, (PartColumn[] Columns, SqliteCommand Insert)> families = [];
    private readonly SqliteCommand code;
    private readonly SqliteCommand price;
    private readonly SqliteCommand file;

    public CatalogFill(SqliteConnection connection)
    {
        this.connection = connection;
        transaction = connection.BeginTransaction();
        Run("PRAGMA defer_foreign_keys = ON");
        Run("DELETE FROM prices");
        foreach (var family in PartFamily.All) Run($"DELETE FROM {family.Name}");
        Run("DELETE FROM parts; DELETE FROM photometry");
        code = Prepared("INSERT INTO parts (code, family) VALUES (@code, @family)", "@code", "@family");
        price = Prepared("INSERT INTO prices (code, from_quantity, unit_price) VALUES (@code, @from, @price)", "@code", "@from", "@price");
        file = Prepared("INSERT INTO photometry (file, bytes) VALUES (@file, @bytes)", "@file", "@bytes");
        foreach (var family in PartFamily.All)
        {
            var columns = Schema.Own(family).ToArray();
            families[family.PartType] = (columns, Prepared(Schema.Insert(family), [.. columns.Select(c => "@" + c.Name)]));
        }
    }

    /// <exception cref="SqliteException">The code stands already.</exception>
    public void Add(Part part)
    {
        Execute(code, part.Code, PartFamily.Of(part).Name);
        var (columns, insert) = families[part.GetType()];
        for (var i = 0; i < columns.Length; i++) insert.Parameters[i].Value = columns[i].ToSql(columns[i].Of(part)) ?? DBNull.Value;
        insert.ExecuteNonQuery();
        foreach (var step in part.PriceBreaks) Execute(price, part.Code, [.. step.ToString().Split(':')]);
    }

    public void Add(string name, byte[] bytes) => Execute(file, name, bytes);

    /// <exception cref="SqliteException">A photometric file is missing.</exception>
    public void Commit() => transaction.Commit();

    public void Dispose()
    {
        foreach (var command in families.Values.Select(f => f.Insert).Append(code).Append(price).Append(file)) command.Dispose();
        transaction.Dispose();
    }

    private static void Execute(SqliteCommand command, object first, params object[] others)
    {
        command.Parameters[0].Value = first;
        for (var i = 0; i < others.Length; i++) command.Parameters[i + 1].Value = others[i];
        command.ExecuteNonQuery();
    }

    private void Run(string sql)
    {
        using var command = Command(sql);
        command.ExecuteNonQuery();
    }

    private SqliteCommand Prepared(string sql, params string[] names)
    {
        var command = Command(sql);
        foreach (var name in names) command.Parameters.Add(new SqliteParameter { ParameterName = name });
        command.Prepare();
        return command;
    }

    private SqliteCommand Command(string sql)
    {
        var command = connection.CreateCommand();
        (command.CommandText, command.Transaction) = (sql, transaction);
        return command;
    }
}
