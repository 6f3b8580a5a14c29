using PriceFloor.Storage.Tests.Contract;

namespace PriceFloor.Storage.Tests.Sqlite;

public sealed class SqliteConditionalWriteTests : ConditionalWriteContract<SqliteUnderTest>;

public sealed class SqliteKeyTests : KeyContract<SqliteUnderTest>;

public sealed class SqliteLimitTests : LimitContract<SqliteUnderTest>;

public sealed class SqliteLifeTests : LifeContract<SqliteUnderTest>;

public sealed class SqliteLogAppendTests : LogAppendContract<SqliteUnderTest>;

public sealed class SqliteLogReadingTests : LogReadingContract<SqliteUnderTest>;

public sealed class SqliteLogRowTests : LogRowContract<SqliteUnderTest>;

public sealed class SqliteLogWholeTests : LogWholeContract<SqliteUnderTest>;

public sealed class SqlitePageTests : PageContract<SqliteUnderTest>;

public sealed class SqlitePositionTests : PositionContract<SqliteUnderTest>;

public sealed class SqliteRevisionTests : RevisionContract<SqliteUnderTest>;

public sealed class SqliteSharedCommitTests : SharedCommitContract<SqliteUnderTest>;

public sealed class SqliteSharingTests : SharingContract<SqliteUnderTest>;

public sealed class SqliteTrailTests : TrailContract<SqliteUnderTest>;

public sealed class SqliteTransferTests : TransferContract<SqliteUnderTest>;
