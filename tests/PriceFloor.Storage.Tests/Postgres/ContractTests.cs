using PriceFloor.Storage.Tests.Contract;

namespace PriceFloor.Storage.Tests.Postgres;

public sealed class PostgresConditionalWriteTests : ConditionalWriteContract<PostgresUnderTest>;

public sealed class PostgresKeyTests : KeyContract<PostgresUnderTest>;

public sealed class PostgresLimitTests : LimitContract<PostgresUnderTest>;

public sealed class PostgresLifeTests : LifeContract<PostgresUnderTest>;

public sealed class PostgresLogAppendTests : LogAppendContract<PostgresUnderTest>;

public sealed class PostgresLogReadingTests : LogReadingContract<PostgresUnderTest>;

public sealed class PostgresLogRowTests : LogRowContract<PostgresUnderTest>;

public sealed class PostgresLogWholeTests : LogWholeContract<PostgresUnderTest>;

public sealed class PostgresPageTests : PageContract<PostgresUnderTest>;

public sealed class PostgresPositionTests : PositionContract<PostgresUnderTest>;

public sealed class PostgresRevisionTests : RevisionContract<PostgresUnderTest>;

public sealed class PostgresSharedCommitTests : SharedCommitContract<PostgresUnderTest>;

public sealed class PostgresSharingTests : SharingContract<PostgresUnderTest>;

public sealed class PostgresTrailTests : TrailContract<PostgresUnderTest>;

public sealed class PostgresTransferTests : TransferContract<PostgresUnderTest>;
